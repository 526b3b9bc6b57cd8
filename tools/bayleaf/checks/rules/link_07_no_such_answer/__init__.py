"""Rules of the family LINK_07_NO_SUCH_ANSWER."""
