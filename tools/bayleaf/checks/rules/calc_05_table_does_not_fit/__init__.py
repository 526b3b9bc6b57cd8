"""Rules of the family CALC_05_TABLE_DOES_NOT_FIT."""
