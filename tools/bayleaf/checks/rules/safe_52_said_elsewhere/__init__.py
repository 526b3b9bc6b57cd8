"""Rules of the family SAFE_52_SAID_ELSEWHERE."""
