"""Rules of the family SAFE_14_ZERO_NOT_SEEN."""
