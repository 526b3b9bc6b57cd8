"""Rules of the family SAFE_42_GAUGE_NOT_FITTED."""
