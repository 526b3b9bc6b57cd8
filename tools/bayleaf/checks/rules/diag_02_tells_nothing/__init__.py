"""Rules of the family DIAG_02_TELLS_NOTHING."""
