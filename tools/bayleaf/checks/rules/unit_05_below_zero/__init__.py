"""Rules of the family UNIT_05_BELOW_ZERO."""
