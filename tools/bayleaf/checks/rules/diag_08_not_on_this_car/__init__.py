"""Rules of the family DIAG_08_NOT_ON_THIS_CAR."""
