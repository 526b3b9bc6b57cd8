"""Rules of the family DIAG_11_NOT_WHILE_BROKEN."""
