"""Rules of the family SAFE_07_NO_LEAK_CHECK."""
