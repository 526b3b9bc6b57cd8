"""Rules of the family JOB_11_WHICH_ONE."""
