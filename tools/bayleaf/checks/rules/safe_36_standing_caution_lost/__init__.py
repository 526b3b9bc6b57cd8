"""Rules of the family SAFE_36_STANDING_CAUTION_LOST."""
