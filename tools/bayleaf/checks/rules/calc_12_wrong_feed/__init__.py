"""Rules of the family CALC_12_WRONG_FEED."""
