"""Rules of the family WORD_06_EQUIPMENT_NOT_LISTED."""
