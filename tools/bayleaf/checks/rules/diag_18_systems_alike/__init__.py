"""Rules of the family DIAG_18_SYSTEMS_ALIKE."""
