"""Rules of the family SAFE_48_WIPED_WHILE_RUNNING."""
