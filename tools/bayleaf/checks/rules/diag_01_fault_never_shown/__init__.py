"""Rules of the family DIAG_01_FAULT_NEVER_SHOWN."""
