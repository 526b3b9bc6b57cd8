"""SAFE-61: the pressure is called relieved, and the fuel had no way to leave."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.steps import Walk, WalkStep
from bayleaf.vocabulary import Acts, States

TURNS = frozenset({Acts.CRANK, Acts.START_ENGINE})


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for index, step in enumerate(walk.steps):
        sets = step.data.get("sets", []) if step.source == record.id else []
        if States.FUEL_PRESSURE_RELIEVED in sets and not _left(walk, index, record, context):
            words = (
                f"step {step.number} calls the fuel pressure relieved, and since the pump last ran no fuel was let out and "
                "no engine has used it up with the pump's fuse out"
            )
            yield RULE.at(record, words, path=(*step.place, "sets", sets.index(States.FUEL_PRESSURE_RELIEVED)))


def _left(walk: Walk, index: int, record: Record, context: Context) -> bool:
    """Whether the fuel could leave before a step, looking back to the last thing that brings pressure."""
    machine = context.procedures.machine
    ended_by = machine.states[States.FUEL_PRESSURE_RELIEVED].ended_by - {Acts.COOL_DOWN, Acts.CRANK_DISABLED}
    for step in reversed(walk.steps[: index + 1]):
        if Acts.BLEED in step.own and any(p.carries == "fuel" and p.side != "high" for p in step.act_paths):
            return True
        if any(machine.states[s].stops for s in step.had):  # led into a container, which a stated quantity bounds
            return True
        if States.PUMP_DISABLED in step.had:
            if _used_up(step) and _dead_everywhere(walk, step, record, context):
                return True
            continue  # whatever the key does, the pump stands still
        if not ended_by.isdisjoint(step.acts):
            return False
    return False


def _used_up(step: WalkStep) -> bool:
    """Whether the engine draws on what is left: it still runs, or the starter turns it for a stated time."""
    return States.RUNNING in step.had or (not TURNS.isdisjoint(step.own) and "lasts" in step.data)


def _dead_everywhere(walk: Walk, step: WalkStep, record: Record, context: Context) -> bool:
    """Whether what was pulled stands in a circuit of every system; a pump that the engine drives pumps while it is cranked."""
    since = next(i for (state, _at), i in step.before.items() if state == States.PUMP_DISABLED)
    pulled, paths = walk.steps[since].at if since >= 0 else (), context.procedures.paths
    return all(any(p.carries == "current" for p in paths.of(pulled, (system,))) for system in record.data["systems"])


RULE = Rule(
    code="SAFE-61",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Relieved with no way out",
    what=(
        "Fuel pressure is relieved by letting fuel out, or by an engine that runs or is cranked for a stated time with the fuse of its "
        "electric pump out. Nothing brings pressure back between that and the step that sets the state."
    ),
    why="Fuel does not leave a closed line because the key was taken out. The first joint that is opened finds it still there.",
    mend="Bleed the line into a bonded container in a step before it, or pull the pump fuse and crank for a stated time.",
    example=Example(
        "procedures/relieve-fuel-pressure.yaml",
        "  - do: Bleed the rail through the test port into the container.\n    act: bleed\n",
        "  - do: Look at the rail and at the test port beside it.\n",
    ),
    find=find,
)
