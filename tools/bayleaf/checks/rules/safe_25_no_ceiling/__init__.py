"""Rules of the family SAFE_25_NO_CEILING."""
