"""Rules of the family UNIT_16_TWO_POINTS."""
