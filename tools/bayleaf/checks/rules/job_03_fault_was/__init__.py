"""Rules of the family JOB_03_FAULT_WAS."""
