"""DIAG-8: a fault speaks of a reading that its systems do not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.stages import STAGE_FIELDS
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims = context.claims
    systems = claims.systems(record.id)
    named: list[tuple[tuple, str, list[str]]] = [
        (("stages", stage, r), r, systems)
        for stage, by in record.data["stages"].items()
        for r in by
        if r not in STAGE_FIELDS
    ]
    named += [
        (("differs", s, stage, r), r, [s])
        for s, by in mapped(record.data.get("differs")).items()
        if s in systems
        for stage, answers in by.items()
        for r in answers
        if r not in STAGE_FIELDS
    ]
    named += [(("proved_by",), record.data["proved_by"], systems)] if isinstance(record.data["proved_by"], str) else []
    for path, reading, where in named:
        if where and not claims.exists(reading, where):
            yield RULE.at(record, f"{reading} does not exist on {either(where)}", path=path, key=path != ("proved_by",))


RULE = Rule(
    code="DIAG-8",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Reading that the systems of a fault do not have",
    what="A fault speaks only of readings that exist on one of its systems, or on a system of another family that the same car may have.",
    why="What is said of a reading that the car does not have is never used, and the reading that was meant stays silent.",
    mend="Name the reading of this system, or the systems of the fault.",
    example=Example(
        "faults/high-pressure-pump-worn.yaml",
        "like: worn, high-side-pressure-idle: low}",
        "like: worn, high-side-pressure-idle: low, rail-pressure-primed: low}",
    ),
    find=find,
)
