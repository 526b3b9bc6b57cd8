"""DIAG-6: two stages of a fault that are the same."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims = context.claims
    systems = claims.systems(record.id) if record.id in claims.faults else []
    names = list(record.data["stages"])
    for n, name in enumerate(names):
        for other in names[:n]:
            if systems and all(
                claims.stages(record.id, s)[name] == claims.stages(record.id, s)[other] for s in systems
            ):
                yield RULE.at(
                    record, f"the stages {other} and {name} show the same everywhere", path=("stages", name), key=True
                )
                break


RULE = Rule(
    code="DIAG-6",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Two stages that are the same",
    what="Any two stages of a fault differ in at least one reading on at least one system.",
    why="A stage that changes nothing halves the weight of the other and tells the reader of a difference that there is not.",
    mend="Say what the later stage changes, or leave it out.",
    example=Example(
        "faults/fuel-filter-restricted.yaml",
        "nearly-blocked: {like: partly, rail-pressure-primed: low, rail-pressure-idle: low}",
        "nearly-blocked: {like: partly}",
    ),
    find=find,
)
