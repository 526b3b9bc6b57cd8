"""SAFE-22: a car is driven where it cannot be driven."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts

ROADS = {"road", "rolling-road"}


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, where = context.procedures.walk(record), record.data["where"]
    step = next((s for s in walk.steps if Acts.DRIVE in s.acts), None)
    bad = [w for w in where if w not in ROADS]
    if step is not None and bad:
        message = (
            f"{step_name(walk, step)} puts the car under load, and the procedure may be done here: {', '.join(bad)}"
        )
        help = f"Write where: [{', '.join(w for w in where if w in ROADS) or 'road, rolling-road'}]."
        yield RULE.at(record, message, help, ("where", where.index(bad[0])))


RULE = Rule(
    code="SAFE-22",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Load on a lift or in the bay",
    what="A procedure with a step that drives the car, or that is done at full load, is done on the road or on a rolling road and nowhere else.",
    why="Wheels that drive a car on a lift walk it off the pads.",
    mend="Name only road and rolling-road in where.",
    example=Example("procedures/drive-at-full-load.yaml", "where: [road, rolling-road]", "where: [road, lift]"),
    find=find,
)
