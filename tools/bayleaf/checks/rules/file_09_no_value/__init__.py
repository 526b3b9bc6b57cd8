"""Rules of the family FILE_09_NO_VALUE."""
