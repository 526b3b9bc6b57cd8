"""Rules of the family SHAPE_04_VALUE_NOT_ALLOWED."""
