"""Rules of the family JOB_06_NOT_ITS_CONDITION."""
