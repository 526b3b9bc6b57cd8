"""Rules of the family SAFE_32_FOLLOWED_TOO_SOON."""
