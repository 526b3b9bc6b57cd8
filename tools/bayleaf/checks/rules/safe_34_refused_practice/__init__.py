"""Rules of the family SAFE_34_REFUSED_PRACTICE."""
