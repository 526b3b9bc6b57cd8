"""Rules of the family UNIT_01_UNIT_NOT_LISTED."""
