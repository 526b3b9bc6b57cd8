"""Rules of the family BOOK_04_UNREACHABLE."""
