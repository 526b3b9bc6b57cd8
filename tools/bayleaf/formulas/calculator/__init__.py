"""Calculator records: compiled, and their worked checks run."""
