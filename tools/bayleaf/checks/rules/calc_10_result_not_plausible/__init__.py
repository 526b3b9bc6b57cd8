"""Rules of the family CALC_10_RESULT_NOT_PLAUSIBLE."""
