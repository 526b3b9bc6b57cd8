"""Rules of the family FILE_08_ANCHOR."""
