"""Rules of the family BASIS_06_CALCULATOR_GIVES_OTHER."""
