"""Rules of the family SHAPE_12_NORMAL_ANSWER."""
