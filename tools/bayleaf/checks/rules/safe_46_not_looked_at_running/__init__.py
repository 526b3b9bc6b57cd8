"""Rules of the family SAFE_46_NOT_LOOKED_AT_RUNNING."""
