"""Rules of the family SAFE_51_DONE_TWICE."""
