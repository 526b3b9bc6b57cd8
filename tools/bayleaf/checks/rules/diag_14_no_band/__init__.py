"""Rules of the family DIAG_14_NO_BAND."""
