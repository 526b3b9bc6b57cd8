"""Formulas: parse, prove dimensions and references, evaluate, tabulate, typeset, and the same in JavaScript."""
