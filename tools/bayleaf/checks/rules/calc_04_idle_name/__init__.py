"""Rules of the family CALC_04_IDLE_NAME."""
