"""Rules of the family FILE_05_NOT_A_RECORD."""
