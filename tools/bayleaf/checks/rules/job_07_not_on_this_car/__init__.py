"""Rules of the family JOB_07_NOT_ON_THIS_CAR."""
