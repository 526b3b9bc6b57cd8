"""Faults: what each stage shows, the fault matrix, and how far readings tell faults apart."""
