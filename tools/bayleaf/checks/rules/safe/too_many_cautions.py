"""SAFE-31: so many cautions that nobody reads them."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

ON_PAGE, ON_STEP = 7, 3


def find(record: Record, context: Context) -> Iterator[Finding]:
    if record.data.get("standing"):
        return
    inherited = context.procedures.walk(record).inherited
    page: list[str] = []
    for i, step in context.procedures.steps_with(record, "cautions"):
        own = [c for c in step["cautions"] if c not in inherited]
        page += [c for c in own if c not in page]
        if len(own) > ON_STEP:
            message = f"step {i + 1} shows {len(own)} cautions of its own"
            yield RULE.at(
                record,
                message,
                "Divide the step, or let a preparation show those that always hold. Leave none out.",
                ("steps", i, "cautions"),
            )
    if len(page) > ON_PAGE:
        message = f"{len(page)} cautions of its own stand before the first step"
        yield RULE.at(
            record,
            message,
            "Divide the procedure, or let a preparation show those that always hold. Leave none out.",
            ("steps",),
        )


RULE = Rule(
    code="SAFE-31",
    level="advice",
    scope="record",
    kinds=("procedures",),
    title="Many cautions at once",
    what="More than 7 cautions of its own on one procedure, or more than 3 on one step. Inherited ones are not counted.",
    why="The eighth caution is not read. The answer is to divide the work, never to drop a caution: it would be missed by SAFE-1.",
    mend="Divide the step or the procedure, or move what always holds to a preparation.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "cautions: [fuel-jet, pressure-not-seen]",
        "cautions: [fuel-jet, pressure-not-seen, hot-parts, running-engine, gauge-over-ranged]",
    ),
    find=find,
)
