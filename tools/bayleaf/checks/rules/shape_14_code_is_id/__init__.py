"""Rules of the family SHAPE_14_CODE_IS_ID."""
