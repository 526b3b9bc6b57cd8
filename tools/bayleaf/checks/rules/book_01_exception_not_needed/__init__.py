"""Rules of the family BOOK_01_EXCEPTION_NOT_NEEDED."""
