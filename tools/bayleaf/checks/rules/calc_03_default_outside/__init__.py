"""Rules of the family CALC_03_DEFAULT_OUTSIDE."""
