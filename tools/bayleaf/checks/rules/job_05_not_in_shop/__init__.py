"""Rules of the family JOB_05_NOT_IN_SHOP."""
