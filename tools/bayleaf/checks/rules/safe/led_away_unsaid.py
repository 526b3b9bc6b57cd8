"""SAFE-44: fuel is led into a container, and no state says so."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    led = [s for s in context.procedures.machine.states.values() if s.stops and s.needs]
    for step in context.procedures.walk(record).doing(Acts.CLOSE_JOINT):
        if not any(p.carries == "fuel" for p in step.act_paths):
            continue
        used = context.procedures.hazards.used_in(step.data)
        fit = [s for s in led if used & set(s.needs)]
        if fit and not any(s.id in step.has for s in fit):
            message = f"step {step.number} joins a fuel line to {min(used & set(fit[0].needs))}, and no state says that fuel is led away"
            yield RULE.at(
                record, message, f"Write sets: [{either([s.id for s in fit])}].", spot(record, step, "equipment", "act")
            )


RULE = Rule(
    code="SAFE-44",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Fuel led away and not said",
    what="A step that closes a fuel joint onto a container sets the state of a joint that leads into one.",
    why="Without the state the pump may run with no quantity at which it stops, and the engine may be started on an open return.",
    mend="Set the state in that step.",
    example=Example("procedures/measure-volume.yaml", "    sets: [joint-into-container]\n", ""),
    find=find,
)
