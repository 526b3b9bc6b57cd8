"""Rules of the family SAFE_44_LED_AWAY_UNSAID."""
