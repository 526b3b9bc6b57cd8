"""Rules of the family SAFE_55_WORKED_BEFORE_LOOKED."""
