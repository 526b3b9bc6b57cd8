"""Rules of the family SAFE_13_ENDS_NOTHING."""
