"""Rules of the family SAFE_01_HAZARD_WITHOUT_CAUTION."""
