"""What tells a demonstration job of the book from a technician's own."""

from __future__ import annotations

# Required in kb/jobs, refused everywhere else.
DEMONSTRATION = ("invented", "true_cause", "expects")
