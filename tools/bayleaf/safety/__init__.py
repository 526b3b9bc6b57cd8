"""The procedure state machine: steps walked with their states, and the hazards that follow."""
