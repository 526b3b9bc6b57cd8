"""DIAG-19: a reason for a reading of which the fault does not speak."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, _context: Context) -> Iterator[Finding]:
    stages = [
        *record.data["stages"].values(),
        *(s for by in mapped(record.data.get("differs")).values() for s in by.values()),
    ]
    spoken = {r for stage in stages for r in stage}
    for reading in mapped(record.data.get("because")):
        if reading not in spoken:
            yield RULE.at(
                record,
                f"because explains {reading}, of which no stage speaks",
                mean(reading, spoken - {"like"}),
                ("because", reading),
                True,
            )


RULE = Rule(
    code="DIAG-19",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Reason without a claim",
    what="The field `because` explains only readings of which a stage of the fault speaks.",
    why="A reason for nothing is what is left when a claim was dropped by mistake.",
    mend="Say what the reading shows, or take the reason out.",
    example=Example(
        "faults/fuel-filter-restricted.yaml", "because: {rail-pressure-primed:", "because: {manifold-vacuum-idle:"
    ),
    find=find,
)
