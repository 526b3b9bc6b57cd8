"""SHAPE-12: healthy answers missing or out of place."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.answers import MEASURED
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """By answers and purpose. Whether each is among the answers of the reading is asked by LINK-6."""
    asks, healthy = record.data.get("purpose", "diagnosis") == "diagnosis", record.data.get("healthy")
    if asks and "answers" in record.data and healthy is None:
        yield RULE.at(record, "the question does not say what a healthy car answers", path=("answers",))
    elif not asks and healthy is not None:
        yield RULE.at(record, "only a reading for diagnosis has healthy answers", "Delete healthy.", ("healthy",), True)
    elif asks and healthy and set(healthy) >= set(record.data.get("answers", MEASURED)):
        yield RULE.at(record, "a healthy car may give every answer, so the reading tells nothing", path=("healthy",))


RULE = Rule(
    code="SHAPE-12",
    level="error",
    scope="record",
    title="Healthy answers missing or out of place",
    what="A question that is taken for diagnosis says which answers a healthy car may give, and they are not all that there are. A measured reading says it where it is not normal alone.",
    why="Without them nothing can be cleared by the answer, and nothing shown.",
    mend="Write healthy with the answers of a healthy car, or another purpose.",
    example=Example("readings/fuel-in-regulator-hose.yaml", "healthy: [dry]\n", ""),
    find=find,
    kinds=("readings",),
)
