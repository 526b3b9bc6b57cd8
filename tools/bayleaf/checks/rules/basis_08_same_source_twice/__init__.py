"""Rules of the family BASIS_08_SAME_SOURCE_TWICE."""
