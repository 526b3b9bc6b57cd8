"""Rules of the family FILE_01_NOT_UTF8."""
