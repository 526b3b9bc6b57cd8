"""Rules of the family WORD_12_ADDRESS_IN_TEXT."""
