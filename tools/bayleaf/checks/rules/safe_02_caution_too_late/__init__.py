"""Rules of the family SAFE_02_CAUTION_TOO_LATE."""
