"""Rules of the family SHAPE_05_WRONG_SPELLING."""
