"""Rules of the family UNIT_17_UNLIKE_DIFFERENCE."""
