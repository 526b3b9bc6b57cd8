"""Rules of the family WORD_10_WORD_TWICE."""
