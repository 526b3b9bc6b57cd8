"""Rules of the family LINK_10_ITSELF."""
