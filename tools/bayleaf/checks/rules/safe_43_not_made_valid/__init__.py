"""Rules of the family SAFE_43_NOT_MADE_VALID."""
