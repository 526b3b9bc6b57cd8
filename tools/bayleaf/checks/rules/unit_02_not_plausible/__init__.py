"""Rules of the family UNIT_02_NOT_PLAUSIBLE."""
