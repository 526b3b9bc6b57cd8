"""Rules of the family SAFE_19_NO_STOP."""
