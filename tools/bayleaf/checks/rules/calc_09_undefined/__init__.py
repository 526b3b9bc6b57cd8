"""Rules of the family CALC_09_UNDEFINED."""
