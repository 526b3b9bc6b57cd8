"""Rules of the family UNIT_03_BAND_NOT_PLAUSIBLE."""
