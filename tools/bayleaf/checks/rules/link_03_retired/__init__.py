"""Rules of the family LINK_03_RETIRED."""
