"""Rules of the family SAFE_22_LOAD_ON_A_LIFT."""
