"""Rules of the family SAFE_12_NOBODY_MAKES."""
