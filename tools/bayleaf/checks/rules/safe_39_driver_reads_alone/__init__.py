"""Rules of the family SAFE_39_DRIVER_READS_ALONE."""
