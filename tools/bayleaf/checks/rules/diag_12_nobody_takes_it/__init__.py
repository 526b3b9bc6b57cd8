"""Rules of the family DIAG_12_NOBODY_TAKES_IT."""
