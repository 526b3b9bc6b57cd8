"""Rules of the family FILE_07_FIELD_TWICE."""
