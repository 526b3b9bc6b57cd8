"""Rules of the family CALC_01_NOT_A_FORMULA."""
