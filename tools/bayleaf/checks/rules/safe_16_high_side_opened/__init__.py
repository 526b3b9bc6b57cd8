"""Rules of the family SAFE_16_HIGH_SIDE_OPENED."""
