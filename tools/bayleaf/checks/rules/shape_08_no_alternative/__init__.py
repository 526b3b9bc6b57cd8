"""Rules of the family SHAPE_08_NO_ALTERNATIVE."""
