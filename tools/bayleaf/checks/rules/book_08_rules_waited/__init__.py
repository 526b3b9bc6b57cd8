"""Rules of the family BOOK_08_RULES_WAITED."""
