"""DIAG-2: a reading that is taken for diagnosis and distinguishes nothing."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.car.car import usable
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    if not is_diagnosis(record) or not usable(record):
        return
    if context.claims.pointing(record.id):
        return
    how = (
        "no fault speaks of it"
        if record.id not in context.claims.named
        else "every fault that speaks of it may leave it normal"
    )
    message = f"this reading tells no two faults apart and shows none: {how}"
    yield RULE.at(record, message, path=("purpose",) if "purpose" in record.data else ("title",))


RULE = Rule(
    code="DIAG-2",
    level="error",
    scope="record",
    kinds=("readings",),
    title="Reading that distinguishes nothing",
    what="A reading for diagnosis is surely other than normal in some stage of some fault. Readings for recognition, computation or safety are exempt.",
    why="It costs minutes on every job and changes nothing that is known afterwards.",
    mend="Say in the faults what it shows, or say what else it is for in purpose.",
    example=Example("readings/manifold-vacuum-idle.yaml", "purpose: computation", "purpose: diagnosis"),
    find=find,
)
