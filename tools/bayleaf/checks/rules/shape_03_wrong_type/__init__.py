"""Rules of the family SHAPE_03_WRONG_TYPE."""
