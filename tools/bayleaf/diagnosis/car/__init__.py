"""A car: its systems, where its parts lie, which readings and faults it can have."""
