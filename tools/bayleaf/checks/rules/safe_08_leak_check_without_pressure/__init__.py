"""Rules of the family SAFE_08_LEAK_CHECK_WITHOUT_PRESSURE."""
