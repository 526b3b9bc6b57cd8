"""Rules of the family SHAPE_06_WRONG_SIZE."""
