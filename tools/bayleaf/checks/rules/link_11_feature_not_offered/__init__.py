"""Rules of the family LINK_11_FEATURE_NOT_OFFERED."""
