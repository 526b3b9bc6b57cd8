"""Rules of the family FILE_02_HIDDEN_CHARACTER."""
