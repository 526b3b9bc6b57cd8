"""Rules of the family CALC_06_CHECK_DOES_NOT_FIT."""
