"""Rules of the family JOB_01_DEMONSTRATION_INCOMPLETE."""
