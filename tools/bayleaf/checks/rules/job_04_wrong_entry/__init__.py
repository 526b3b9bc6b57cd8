"""Rules of the family JOB_04_WRONG_ENTRY."""
