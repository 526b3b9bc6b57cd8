"""Rules of the family CALC_02_DOES_NOT_CLOSE."""
