"""Rules of the family UNIT_11_INSTRUMENT_TOO_SHORT."""
