"""Rules of the family SHAPE_07_OUTSIDE_BOUNDS."""
