"""Rules of the family UNIT_09_CONVERSION_BY_HAND."""
