"""Rules of the family DIAG_04_MEND_NOT_PROVED."""
