"""Rules of the family UNIT_19_DOES_NOT_MEASURE."""
