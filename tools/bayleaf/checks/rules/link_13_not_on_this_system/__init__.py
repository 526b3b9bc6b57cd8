"""Rules of the family LINK_13_NOT_ON_THIS_SYSTEM."""
