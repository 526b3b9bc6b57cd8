"""The language of formulas: grammar, types, proofs and evaluation."""
