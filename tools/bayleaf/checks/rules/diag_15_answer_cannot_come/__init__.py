"""Rules of the family DIAG_15_ANSWER_CANNOT_COME."""
