"""Rules of the family SAFE_40_GREATEST_TOO_SMALL."""
