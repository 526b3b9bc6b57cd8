"""Rules of the family JOB_08_OFF_THE_SCALE."""
