"""Rules of the family UNIT_04_MIN_NOT_BELOW_MAX."""
