"""Rules of the family WORD_03_LONG_SENTENCE."""
