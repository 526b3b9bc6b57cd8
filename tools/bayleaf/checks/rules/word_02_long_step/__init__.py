"""Rules of the family WORD_02_LONG_STEP."""
