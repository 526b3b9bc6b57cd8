"""Rules of the family FILE_03_TAB_INDENT."""
