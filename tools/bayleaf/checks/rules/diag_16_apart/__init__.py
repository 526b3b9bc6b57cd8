"""Rules of the family DIAG_16_APART."""
