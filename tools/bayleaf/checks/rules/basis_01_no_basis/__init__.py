"""Rules of the family BASIS_01_NO_BASIS."""
