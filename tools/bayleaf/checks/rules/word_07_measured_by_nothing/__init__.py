"""Rules of the family WORD_07_MEASURED_BY_NOTHING."""
