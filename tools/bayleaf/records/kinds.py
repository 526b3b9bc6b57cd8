"""The kinds of record and of vocabulary: one row says all that is said of a kind itself."""

from __future__ import annotations

from typing import Any, NamedTuple

MENU, MORE, DEMO = "menu", "more", "demo"


class Kind(NamedTuple):
    """A kind of record.

    `name` is its folder under kb/, of a vocabulary its file in kb/vocabulary/. `singular` is one of it, for sentences.
    `place` and `rank`: where the index of the kind is linked on the site, and at which place there: in the menu, on the
    page of what is not in it, among the demonstration. `weight`, 1 to 9: which of two pages that fit a search equally
    well comes first; what a technician is after goes before what explains it. `paged`: each of its records has a page;
    else all stand on one. `gist` is the field that says in a search what a record is about.
    """

    name: str
    singular: str
    title: str
    place: str
    rank: int
    weight: int = 1
    paged: bool = True
    vocabulary: bool = False
    gist: str = "summary"


_ROWS = (
    Kind("systems", "system", "Systems", MENU, 6, 5),
    Kind("components", "component", "Components", MENU, 7, 4),
    Kind("equipment", "equipment", "Equipment", MENU, 8, 3),
    Kind("readings", "reading", "Readings", MENU, 3, 6),
    Kind("procedures", "procedure", "Procedures", MENU, 2, 8),
    Kind("faults", "fault", "Faults", MENU, 4, 6),
    Kind("symptoms", "symptom", "Symptoms", MENU, 1, 7),
    Kind("codes", "code", "Codes", MENU, 5, 7),
    Kind("calculators", "calculator", "Calculators", MENU, 9, 5),
    Kind("vehicles", "vehicle", "Vehicles", DEMO, 1, 2),
    Kind("jobs", "job", "Jobs", DEMO, 2, 2),
    Kind("quantities", "quantity", "Quantities and units", MORE, 4, paged=False, vocabulary=True),
    Kind("conditions", "condition", "Conditions", MORE, 5, paged=False, vocabulary=True),
    Kind("variables", "variable", "Variables", MORE, 6, paged=False, vocabulary=True),
    Kind("effects", "effect", "Effects", MORE, 7, paged=False, vocabulary=True),
    Kind("histories", "history", "Histories", MORE, 8, paged=False, vocabulary=True),
    Kind("states", "state", "States", MORE, 9, paged=False, vocabulary=True),
    Kind("acts", "act", "Acts", MORE, 10, paged=False, vocabulary=True),
    Kind("hazards", "hazard", "Hazards", MORE, 11, paged=False, vocabulary=True),
    Kind("cautions", "caution", "Cautions", MENU, 10, 3, vocabulary=True, gist="danger"),
    Kind("fuels", "fuel", "Fuels", MORE, 3, 2, paged=False, vocabulary=True),
    Kind("sources", "source", "Sources", MORE, 2, paged=False, vocabulary=True),
    Kind("terms", "term", "Terms", MENU, 11, 3, paged=False, vocabulary=True, gist="means"),
    Kind("tasks", "task", "Tasks", MORE, 1, 2, paged=False, vocabulary=True),
)
KIND = {row.name: row for row in _ROWS}
KINDS = tuple(KIND)
RECORD_KINDS = tuple(row.name for row in _ROWS if not row.vocabulary)
VOCABULARY_KINDS = tuple(row.name for row in _ROWS if row.vocabulary)

OUTSIDE = "outside-this-book"  # no id of any record: named where the cause is none that the book describes


def linked_in(place: str) -> list[Kind]:
    """The kinds whose index is linked at a place, in their order there."""
    return sorted((row for row in _ROWS if row.place == place), key=lambda row: row.rank)


def listed(value: object) -> list[Any]:
    """A list field as a list: a missing field is the empty list."""
    return value if isinstance(value, list) else []


def mapped(value: object) -> dict[str, Any]:
    """A map field as a map: a missing field is the empty map."""
    return value if isinstance(value, dict) else {}
