"""Rules of the family UNIT_21_GREATEST_TOO_SMALL."""
