"""Rules of the family FILE_04_TOO_BIG."""
