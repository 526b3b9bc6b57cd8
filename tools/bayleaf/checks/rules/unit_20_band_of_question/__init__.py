"""Rules of the family UNIT_20_BAND_OF_QUESTION."""
