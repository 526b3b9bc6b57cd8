"""Rules of the family SAFE_24_ACT_WITHOUT_PART."""
