"""Rules of the family SAFE_37_JOINT_BY_ANOTHER_NAME."""
