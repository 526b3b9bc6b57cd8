"""Rules of the family LINK_12_TWO_OF_FAMILY."""
