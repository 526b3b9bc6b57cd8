"""Rules of the family UNIT_10_DECIMAL_SLIP."""
