"""Rules of the family UNIT_12_NUMBER_IN_STEP."""
