"""Rules of the family LINK_01_NO_SUCH_ID."""
