"""Rules of the family JOB_09_TRUE_CAUSE_CLEARED."""
