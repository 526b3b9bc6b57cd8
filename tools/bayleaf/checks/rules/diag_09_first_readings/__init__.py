"""Rules of the family DIAG_09_FIRST_READINGS."""
