"""Rules of the family LINK_08_NO_SUCH_PATH."""
