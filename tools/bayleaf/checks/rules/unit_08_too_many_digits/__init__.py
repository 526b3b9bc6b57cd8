"""Rules of the family UNIT_08_TOO_MANY_DIGITS."""
