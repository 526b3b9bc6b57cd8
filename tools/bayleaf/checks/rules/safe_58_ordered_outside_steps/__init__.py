"""Rules of the family SAFE_58_ORDERED_OUTSIDE_STEPS."""
