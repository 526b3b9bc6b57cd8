"""Rules of the family DIAG_03_FEW_CAUSES."""
