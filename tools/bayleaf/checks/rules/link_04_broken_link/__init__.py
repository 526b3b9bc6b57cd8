"""Rules of the family LINK_04_BROKEN_LINK."""
