"""Rules of the family SAFE_10_LEAVES_WHAT_IS_NOT_THERE."""
