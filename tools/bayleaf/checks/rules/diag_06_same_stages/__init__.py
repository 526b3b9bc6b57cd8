"""Rules of the family DIAG_06_SAME_STAGES."""
