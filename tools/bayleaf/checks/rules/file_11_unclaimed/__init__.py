"""Rules of the family FILE_11_UNCLAIMED."""
