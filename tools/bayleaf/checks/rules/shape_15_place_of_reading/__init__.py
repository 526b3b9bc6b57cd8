"""Rules of the family SHAPE_15_PLACE_OF_READING."""
