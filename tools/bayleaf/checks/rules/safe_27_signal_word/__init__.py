"""Rules of the family SAFE_27_SIGNAL_WORD."""
