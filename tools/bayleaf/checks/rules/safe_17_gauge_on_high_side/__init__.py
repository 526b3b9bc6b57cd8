"""Rules of the family SAFE_17_GAUGE_ON_HIGH_SIDE."""
