"""Rules of the family UNIT_07_BANDS_APART."""
