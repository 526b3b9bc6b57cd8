"""Rules of the family SAFE_15_PROOF_WITHOUT_READING."""
