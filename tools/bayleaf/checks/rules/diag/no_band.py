"""DIAG-14: a measured reading with no band."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims, readings = context.claims, context.book.of("readings")
    bands = mapped(record.data.get("bands"))
    spoken = claims.spoken(record.id)
    missing = [
        r for r in claims.readings(record.id) if r in spoken and "answers" not in readings[r].data and r not in bands
    ]
    if missing:
        yield RULE.at(
            record,
            f"no band for {either(missing, 'and')}, so only the maker's figure can judge it",
            path=("bands",),
            key=True,
        )


RULE = Rule(
    code="DIAG-14",
    level="warning",
    scope="record",
    kinds=("systems",),
    title="Measured reading without a band",
    what="A system has a band for every measured reading that its faults speak of.",
    why="Where the maker's figure is not at hand, the reading cannot be judged, and every fault that it would show stays hidden.",
    mend="Write the general band with its basis, or except the system with the reason why there is none.",
    excusable=True,
    example=Example(
        "systems/port-injection-return.yaml",
        "  pump-supply-voltage: {min: 11.5, max: 15, unit: V, means: limit, basis: {practice: true}}\n",
        "",
    ),
    find=find,
)
