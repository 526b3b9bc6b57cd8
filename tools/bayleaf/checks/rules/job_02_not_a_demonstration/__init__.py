"""Rules of the family JOB_02_NOT_A_DEMONSTRATION."""
