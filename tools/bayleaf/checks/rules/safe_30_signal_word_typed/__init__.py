"""Rules of the family SAFE_30_SIGNAL_WORD_TYPED."""
