"""Rules of the family WORD_01_NO_VERB."""
