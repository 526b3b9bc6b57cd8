"""Rules of the family LINK_09_NO_SUCH_STAGE."""
