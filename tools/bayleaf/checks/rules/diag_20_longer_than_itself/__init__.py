"""Rules of the family DIAG_20_LONGER_THAN_ITSELF."""
