"""Rules of the family UNIT_14_NO_READING_PASSES."""
