"""Rules of the family SHAPE_11_LAYER_FIELDS."""
