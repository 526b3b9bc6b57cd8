"""Rules of the family SAFE_11_NOBODY_ENDS."""
