"""Rules of the family SAFE_26_EMISSION_DEFEATED."""
