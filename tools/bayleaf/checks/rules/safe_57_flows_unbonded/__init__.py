"""Rules of the family SAFE_57_FLOWS_UNBONDED."""
