"""Rules of the family BOOK_03_SOURCE_NOT_CITED."""
