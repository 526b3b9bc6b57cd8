"""The prose of records, made ready for rules."""
