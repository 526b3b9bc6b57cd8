"""Rules of the family BOOK_02_NOT_EXCUSABLE."""
