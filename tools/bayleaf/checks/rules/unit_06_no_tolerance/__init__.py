"""Rules of the family UNIT_06_NO_TOLERANCE."""
