"""Rules of the family JOB_10_REPLAY_DIFFERS."""
