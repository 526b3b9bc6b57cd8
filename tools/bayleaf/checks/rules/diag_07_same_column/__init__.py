"""Rules of the family DIAG_07_SAME_COLUMN."""
