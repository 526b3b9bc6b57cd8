"""Rules of the family WORD_14_RESULTS_DO_NOT_MATCH."""
