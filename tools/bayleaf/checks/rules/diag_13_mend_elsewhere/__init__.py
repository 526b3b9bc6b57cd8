"""Rules of the family DIAG_13_MEND_ELSEWHERE."""
