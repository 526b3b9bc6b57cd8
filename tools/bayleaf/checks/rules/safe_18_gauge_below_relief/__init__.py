"""Rules of the family SAFE_18_GAUGE_BELOW_RELIEF."""
