"""Rules of the family WORD_05_VAGUE."""
