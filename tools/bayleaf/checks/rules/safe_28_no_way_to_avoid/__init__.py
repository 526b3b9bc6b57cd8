"""Rules of the family SAFE_28_NO_WAY_TO_AVOID."""
