"""Rules of the family DIAG_21_FELT_AND_NOT_SHOWN."""
