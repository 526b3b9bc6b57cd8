"""Rules of the family SAFE_53_RELIEVED_HOT."""
