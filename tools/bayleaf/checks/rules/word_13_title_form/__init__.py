"""Rules of the family WORD_13_TITLE_FORM."""
