"""DIAG-15: a fault claims an answer that the band has no limit for."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims = context.claims
    said: set[str] = set()
    for system in claims.systems(record.id) if record.id in claims.faults else []:
        one_sided = claims.blind(system)
        for stage, answers in claims.stages(record.id, system).items():
            for reading, blind in one_sided.items():
                if blind in answers.get(reading, ()) and reading not in said:
                    said.add(reading)
                    side = "upper" if blind == "high" else "lower"
                    message = f"stage {stage} lets {reading} be {blind}, and its band on {system} has no {side} limit"
                    yield RULE.at(record, message, path=("stages", stage, reading))


RULE = Rule(
    code="DIAG-15",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Answer that cannot come",
    what="Where a band has a limit on one side only, no fault claims the answer of the other side.",
    why="No value can ever be judged so. The fault would wait for an answer that nobody can give.",
    mend="Give the band its other limit, or take the answer out.",
    excusable=True,
    example=Example(
        "systems/direct-injection.yaml",
        "high-side-pressure-idle: {min: 400, max: 1500,",
        "high-side-pressure-idle: {max: 1500,",
    ),
    find=find,
)
