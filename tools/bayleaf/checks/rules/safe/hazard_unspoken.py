"""SAFE-35: a hazard that no caution speaks of."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    if not context.procedures.guards(record.id):
        yield RULE.at(record, f"no caution speaks of this hazard: {record.title.lower()}", "", ())


RULE = Rule(
    code="SAFE-35",
    level="error",
    scope="record",
    kinds=("hazards",),
    title="Hazard that no caution speaks of",
    what="Every hazard of the vocabulary is named in the `hazards` of at least one caution that is not retired.",
    why="A procedure that meets the hazard has nothing to show.",
    mend="Write a caution with the hazard in its hazards, or add the hazard to the caution that speaks of it.",
    example=Example("vocabulary/cautions.yaml", "hazards: [leak-seen, flame-near-fuel]", "hazards: [leak-seen]"),
    find=find,
)
