"""Rules of the family LINK_02_WRONG_KIND."""
