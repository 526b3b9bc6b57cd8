"""Rules of the family FILE_06_BROKEN_YAML."""
