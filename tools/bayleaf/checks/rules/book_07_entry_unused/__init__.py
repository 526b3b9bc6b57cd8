"""Rules of the family BOOK_07_ENTRY_UNUSED."""
