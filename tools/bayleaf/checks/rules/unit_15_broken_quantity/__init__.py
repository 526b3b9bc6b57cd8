"""Rules of the family UNIT_15_BROKEN_QUANTITY."""
