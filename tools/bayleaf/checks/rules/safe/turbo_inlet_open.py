"""SAFE-38: the engine runs with an open turbocharger inlet."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, Components, States


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, systems = context.procedures.walk(record), context.book.of("systems")
    if not any(step.stands(States.AIR_INLET_OPEN) for step in walk.own):
        return
    turbo = [
        s
        for s in record.data["systems"]
        if s in systems
        and systems[s].sound
        and any(Components.TURBOCHARGER in c for p in systems[s].data.get("paths", []) for c in p["through"])
    ]
    for step in walk.own if turbo else []:
        if step.stands(States.AIR_INLET_OPEN) and (
            step.stands(States.RUNNING) or {Acts.START_ENGINE, Acts.CRANK, Acts.CRANK_DISABLED} & step.acts
        ):
            message = f"{step_name(walk, step)} runs the engine with an open inlet, and {turbo[0]} has a turbocharger"
            yield RULE.at(record, message, path=spot(record, step, "act", "when"))
            return


RULE = Rule(
    code="SAFE-38",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Turbocharger inlet open while running",
    what="On a system with a turbocharger the engine is neither cranked nor run while the air inlet is open.",
    why="The wheel turns at over 100,000 rpm, draws in a sleeve or a rag, and bursts.",
    mend="Close the inlet before the engine is turned.",
    example=Example(
        "procedures/read-boost.yaml",
        "  - {do: Start the engine., act: start-engine}",
        "  - {do: Take the inlet duct off., act: disconnect, at: inlet-duct, sets: [air-inlet-open]}\n"
        "  - {do: Start the engine., act: start-engine}",
    ),
    find=find,
)
