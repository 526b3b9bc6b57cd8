"""Rules of the family SAFE_21_ELECTRICAL_AT_OPEN_JOINT."""
