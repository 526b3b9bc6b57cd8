"""Rules of the family SAFE_45_CONTAINER_TOO_SMALL."""
