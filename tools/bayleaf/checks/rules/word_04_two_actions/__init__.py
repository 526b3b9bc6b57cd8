"""Rules of the family WORD_04_TWO_ACTIONS."""
