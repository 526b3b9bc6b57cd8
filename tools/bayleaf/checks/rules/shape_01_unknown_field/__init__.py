"""Rules of the family SHAPE_01_UNKNOWN_FIELD."""
