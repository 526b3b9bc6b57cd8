"""Rules of the family WORD_08_SYNONYM."""
