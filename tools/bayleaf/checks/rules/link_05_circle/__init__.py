"""Rules of the family LINK_05_CIRCLE."""
