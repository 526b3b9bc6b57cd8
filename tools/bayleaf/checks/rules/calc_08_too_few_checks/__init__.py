"""Rules of the family CALC_08_TOO_FEW_CHECKS."""
