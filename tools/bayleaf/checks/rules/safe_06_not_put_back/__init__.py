"""Rules of the family SAFE_06_NOT_PUT_BACK."""
