"""Strict YAML: text to data, positions and problems."""
