"""DIAG-19: a reason for a reading of which neither the fault nor the graph speaks."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.stages import STAGE_FIELDS
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    because = mapped(record.data.get("because"))
    if not because or record.id not in context.claims.faults:
        return
    spoken = {
        reading
        for system in context.claims.systems(record.id)
        for answers in context.claims.stages(record.id, system).values()
        for reading in answers
    }
    differs = mapped(record.data.get("differs")).values()
    stages = [*record.data["stages"].values(), *(stage for by in differs for stage in by.values())]
    spoken |= {reading for stage in stages for reading in stage}
    for reading in because:
        if reading not in spoken:
            yield RULE.at(
                record,
                f"because explains {reading}, of which no stage speaks and which the graph does not clear",
                mean(reading, spoken.difference(STAGE_FIELDS)),
                ("because", reading),
                True,
            )


RULE = Rule(
    code="DIAG-19",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Reason without a claim",
    what="The field `because` explains only readings of which a stage of the fault speaks, or which the graph says are healthy with it.",
    why="A reason for nothing is what is left when a claim was dropped by mistake.",
    mend="Say what the reading shows, or take the reason out.",
    example=Example(
        "faults/fuel-filter-restricted.yaml", "because: {rail-pressure-primed:", "because: {manifold-vacuum-idle:"
    ),
    find=find,
)
