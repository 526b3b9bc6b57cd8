"""DIAG-1: a fault that no reading shows."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims = context.claims
    systems = claims.systems(record.id)
    if not systems:
        yield RULE.at(
            record,
            f"{record.data['part']} lies on no path of any system, so the fault is in no car",
            "Name systems, or put the part on a path.",
            ("part",),
        )
        return
    if record.id not in claims.faults:
        return
    stages = [(system, answers) for system in systems for answers in claims.stages(record.id, system).values()]
    if not any(claims.sure(system, r, a) for system, answers in stages for r, a in answers.items()):
        yield RULE.at(
            record, "no reading is sure to be other than normal in any stage of this fault", path=("stages",), key=True
        )


RULE = Rule(
    code="DIAG-1",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Fault that no reading shows",
    what="In at least one stage a fault makes at least one reading surely other than normal. An answer that may also be normal shows nothing.",
    why="A fault that nothing shows is never found, and never cleared either: it stays on every list of causes.",
    mend="Say which reading shows it, or write the reading that would.",
    example=Example(
        "faults/regulator-hose-off.yaml",
        'rail-pressure-idle: high\n    injector-pressure-idle: high\n    fuel-in-regulator-hose: "off"',
        "rail-pressure-idle: [normal, high]\n    injector-pressure-idle: normal\n    fuel-in-regulator-hose: dry",
    ),
    find=find,
)
