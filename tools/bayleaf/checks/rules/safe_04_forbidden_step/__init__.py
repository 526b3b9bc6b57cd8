"""Rules of the family SAFE_04_FORBIDDEN_STEP."""
