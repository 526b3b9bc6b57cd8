"""Rules of the family BOOK_05_SAME_TITLE."""
