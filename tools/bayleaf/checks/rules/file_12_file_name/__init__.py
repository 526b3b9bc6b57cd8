"""Rules of the family FILE_12_FILE_NAME."""
