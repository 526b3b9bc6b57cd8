"""Rules of the family SAFE_50_EYES_UNPROTECTED."""
