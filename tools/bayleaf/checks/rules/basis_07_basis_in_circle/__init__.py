"""Rules of the family BASIS_07_BASIS_IN_CIRCLE."""
