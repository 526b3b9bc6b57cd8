"""Rules of the family SAFE_23_NO_PREPARATION."""
