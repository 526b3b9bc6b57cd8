"""Rules of the family WORD_09_LONG_EXPLANATION."""
