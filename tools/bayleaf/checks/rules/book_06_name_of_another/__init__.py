"""Rules of the family BOOK_06_NAME_OF_ANOTHER."""
