"""Rules of the family SHAPE_13_FOLLOW_WITH_MORE."""
