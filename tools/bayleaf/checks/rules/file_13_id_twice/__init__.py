"""Rules of the family FILE_13_ID_TWICE."""
