"""Rules of the family SHAPE_10_PATH_TWICE."""
