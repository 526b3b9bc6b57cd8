"""Rules of the family SAFE_33_CONDITION_NOT_REACHED."""
