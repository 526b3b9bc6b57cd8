"""Rules of the family SAFE_29_NOTICE_OF_INJURY."""
