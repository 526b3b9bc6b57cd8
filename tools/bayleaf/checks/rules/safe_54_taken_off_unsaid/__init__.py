"""Rules of the family SAFE_54_TAKEN_OFF_UNSAID."""
