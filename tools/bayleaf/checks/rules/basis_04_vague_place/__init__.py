"""Rules of the family BASIS_04_VAGUE_PLACE."""
