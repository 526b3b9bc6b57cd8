"""Rules of the family SAFE_49_BLED_INTO_NOTHING."""
