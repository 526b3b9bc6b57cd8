"""Rules of the family CALC_07_NOT_REPRODUCED."""
