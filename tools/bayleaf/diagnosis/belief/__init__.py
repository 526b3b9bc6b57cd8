"""Belief: readings and complaint as evidence, and how they share the weight among the faults of a car."""
