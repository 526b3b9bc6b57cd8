"""Rules of the family UNIT_18_UNLIKE_INPUT."""
