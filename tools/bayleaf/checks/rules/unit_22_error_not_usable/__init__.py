"""Rules of the family UNIT_22_ERROR_NOT_USABLE."""
