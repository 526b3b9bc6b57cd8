"""Formulas as tables, as JavaScript and as mathematics."""
