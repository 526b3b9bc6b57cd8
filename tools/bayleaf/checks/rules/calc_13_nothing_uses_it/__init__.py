"""Rules of the family CALC_13_NOTHING_USES_IT."""
