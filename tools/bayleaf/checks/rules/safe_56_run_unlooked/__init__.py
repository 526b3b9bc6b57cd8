"""Rules of the family SAFE_56_RUN_UNLOOKED."""
