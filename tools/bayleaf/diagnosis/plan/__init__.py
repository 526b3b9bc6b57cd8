"""The next test: what each one costs, what it is expected to tell, and which comes first."""
