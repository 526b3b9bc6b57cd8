"""Rules of the family SAFE_59_TOO_FEW_PEOPLE."""
