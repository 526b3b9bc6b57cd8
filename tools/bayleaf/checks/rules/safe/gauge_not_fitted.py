"""SAFE-42: a gauge is read that nobody has fitted."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import units
from bayleaf.records import Record
from bayleaf.vocabulary import Equipment


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    connections = {s.id for s in machine.states.values() if s.connection}
    for step in walk.taking:
        taken = step.data.get("takes", {})
        quantity = context.amounts.measured(taken.get("reading", ""))
        low = any(p.carries == "fuel" and p.side != "high" for p in step.read_paths)
        if "instrument" not in taken or quantity is None or quantity.dimension != units()["Pa"].dimension or not low:
            continue
        if (
            Equipment.SCAN_TOOL in context.procedures.hazards.types(taken["instrument"])
            or (step.had | step.has) & connections
        ):
            continue
        ended = next(
            (
                i
                for i in range(walk.steps.index(step) - 1, -1, -1)
                for n in walk.steps[i].notes
                if n.kind == "ended" and n.what in connections
            ),
            None,
        )
        how = (
            f"{called(walk, ended)} took it off"
            if ended is not None
            else "no connection is in needs, and no step makes one"
        )
        yield RULE.at(
            record,
            f"{step_name(walk, step)} reads {taken['instrument']} on a fuel path, and {how}",
            path=(*step.place, "takes"),
        )


RULE = Rule(
    code="SAFE-42",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Gauge that nobody has fitted",
    what="A fuel pressure is read on a gauge or a sender only while a connection stands: it is in `needs`, or a step before has made it.",
    why="Whoever has no fitted gauge fits one on the spot: without relief, without a cloth and without a leak check.",
    mend="Name the connection in needs, or follow the procedure that fits it.",
    example=Example(
        "procedures/measure-primed-pressure.yaml", "needs: {states: [gauge-on-rail],", "needs: {states: none,"
    ),
    find=find,
)
