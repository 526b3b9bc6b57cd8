"""Verdicts: a value, its band and its instrument, and what they prove."""
