"""Rules of the family DIAG_19_BECAUSE_OF_NOTHING."""
