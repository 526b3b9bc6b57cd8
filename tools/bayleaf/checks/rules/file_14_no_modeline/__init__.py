"""Rules of the family FILE_14_NO_MODELINE."""
