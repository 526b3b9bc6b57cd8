"""Rules of the family DIAG_10_FIRST_TELLS_NOTHING."""
