"""Rules of the family SAFE_35_HAZARD_UNSPOKEN."""
