"""Rules of the family CALC_14_RESULT_UNPROVED."""
