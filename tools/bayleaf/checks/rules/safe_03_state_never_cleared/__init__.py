"""Rules of the family SAFE_03_STATE_NEVER_CLEARED."""
