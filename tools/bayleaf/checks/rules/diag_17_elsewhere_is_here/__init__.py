"""Rules of the family DIAG_17_ELSEWHERE_IS_HERE."""
