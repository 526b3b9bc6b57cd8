"""The kinds of record and of vocabulary, and where each lies under kb/."""

from __future__ import annotations

RECORD_KINDS = (
    "systems",
    "components",
    "equipment",
    "readings",
    "procedures",
    "faults",
    "symptoms",
    "codes",
    "calculators",
    "vehicles",
    "jobs",
)
VOCABULARY_KINDS = (
    "quantities",
    "conditions",
    "variables",
    "effects",
    "histories",
    "states",
    "acts",
    "hazards",
    "cautions",
    "fuels",
    "sources",
    "terms",
    "tasks",
)
KINDS = RECORD_KINDS + VOCABULARY_KINDS

# One of a kind, for sentences: "no such reading".
SINGULAR = {
    "systems": "system",
    "components": "component",
    "equipment": "equipment",
    "readings": "reading",
    "procedures": "procedure",
    "faults": "fault",
    "symptoms": "symptom",
    "codes": "code",
    "calculators": "calculator",
    "vehicles": "vehicle",
    "jobs": "job",
    "quantities": "quantity",
    "conditions": "condition",
    "variables": "variable",
    "effects": "effect",
    "histories": "history",
    "states": "state",
    "acts": "act",
    "hazards": "hazard",
    "cautions": "caution",
    "fuels": "fuel",
    "sources": "source",
    "terms": "term",
    "tasks": "task",
}

OUTSIDE = "outside-this-book"  # no id of any record: named where the cause is none that the book describes


def listed(value: object) -> list:
    """A list field as a list: the word `none` and a missing field are the empty list."""
    return value if isinstance(value, list) else []


def mapped(value: object) -> dict:
    """A map field as a map: the word `none` and a missing field are the empty map."""
    return value if isinstance(value, dict) else {}
