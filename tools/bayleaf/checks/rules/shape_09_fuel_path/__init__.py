"""Rules of the family SHAPE_09_FUEL_PATH."""
