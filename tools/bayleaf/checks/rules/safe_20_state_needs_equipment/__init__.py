"""Rules of the family SAFE_20_STATE_NEEDS_EQUIPMENT."""
