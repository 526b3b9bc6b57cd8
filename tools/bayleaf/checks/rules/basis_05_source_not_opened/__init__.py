"""Rules of the family BASIS_05_SOURCE_NOT_OPENED."""
