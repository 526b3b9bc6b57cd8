"""Rules of the family SAFE_31_TOO_MANY_CAUTIONS."""
