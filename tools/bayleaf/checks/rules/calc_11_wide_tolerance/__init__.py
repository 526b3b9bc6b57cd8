"""Rules of the family CALC_11_WIDE_TOLERANCE."""
