"""Rules of the family UNIT_13_INSTRUMENT_AT_GREATEST."""
