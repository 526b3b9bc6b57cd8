"""Rules of the family SAFE_05_NOT_MADE_SAFE."""
