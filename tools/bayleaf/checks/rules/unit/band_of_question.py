"""UNIT-20: band of something that is not measured."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Bands of systems and vehicles, and the maker's of jobs."""
    for name in ("bands", "maker_bands"):
        for id in record.data.get(name, {}):
            reading = context.book.of("readings").get(id)
            if reading and reading.sound and "answers" in reading.data:
                yield RULE.at(
                    record,
                    f"{id} is a question with the answers {either(reading.data['answers'], 'and')}",
                    path=(name, id),
                    key=True,
                )


RULE = Rule(
    code="UNIT-20",
    level="error",
    scope="record",
    title="Band of something that is not measured",
    what="Only a reading with a number has a band; a question has answers instead.",
    why="A band of a question is never compared with anything.",
    mend="Delete the band, or give the reading a quantity.",
    example=Example(
        "systems/direct-injection.yaml",
        "bands:\n",
        "bands:\n  lines-at-rail: {min: 1, max: 2, unit: V, means: limit, basis: {practice: true}}\n",
    ),
    find=find,
    kinds=("systems", "vehicles", "jobs"),
)
