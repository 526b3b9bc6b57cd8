"""Rules of the family SAFE_09_CONNECTION_NOT_DECLARED."""
