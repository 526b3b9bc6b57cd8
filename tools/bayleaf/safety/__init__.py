"""The procedure state machine: steps walked with their states, and the hazards that follow. `walk` is the one walk."""

from __future__ import annotations

from bayleaf.safety.as_text import as_text
from bayleaf.safety.hazards import Hazards, Met, types_of
from bayleaf.safety.machine import Brought, Machine, State
from bayleaf.safety.paths import PathFact, Paths, pascals
from bayleaf.safety.preparations import cautions_of, preparations
from bayleaf.safety.steps import FieldPath, Key, Note, Walk, WalkStep
from bayleaf.safety.triggers import Trigger
from bayleaf.safety.walk import walk

__all__ = [
    "Brought",
    "FieldPath",
    "Hazards",
    "Key",
    "Machine",
    "Met",
    "Note",
    "PathFact",
    "Paths",
    "State",
    "Trigger",
    "Walk",
    "WalkStep",
    "as_text",
    "cautions_of",
    "pascals",
    "preparations",
    "types_of",
    "walk",
]
