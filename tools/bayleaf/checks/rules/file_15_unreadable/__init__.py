"""Rules of the family FILE_15_UNREADABLE."""
