"""Rules of the family WORD_11_MIXED_LETTERS."""
