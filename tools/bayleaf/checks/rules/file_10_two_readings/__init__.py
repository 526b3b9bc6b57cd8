"""Rules of the family FILE_10_TWO_READINGS."""
