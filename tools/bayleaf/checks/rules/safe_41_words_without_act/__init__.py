"""Rules of the family SAFE_41_WORDS_WITHOUT_ACT."""
