"""Rules of the family SHAPE_02_MISSING_FIELD."""
