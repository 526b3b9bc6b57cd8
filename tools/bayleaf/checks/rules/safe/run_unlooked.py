"""SAFE-56: the engine runs with a temporary joint on its fuel line, and the look at it does not come next."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, States


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    joints = {id for id, state in machine.states.items() if state.connection}
    first = next(
        (i for i, s in enumerate(walk.steps) if Acts.START_ENGINE in s.own and not joints.isdisjoint(s.had)), None
    )
    if first is None:
        return
    step = walk.steps[first]
    other = context.procedures.followed(record, step)
    if other is not None and any(state in joints for state, _at in context.procedures.walk(other).start):
        return  # the followed procedure needs the joint itself, so it is said there
    after = next((s for s in walk.steps[first + 1 :] if "do" in s.data), None)
    if after is None or Acts.LEAK_CHECK not in after.own or not after.stands(States.RUNNING):
        on = machine.named(min(joints & step.had))
        message = f"{step_name(walk, step)} starts the engine while {on} stands, and the next step does not look at that joint"
        yield RULE.at(record, message, path=spot(record, step, "act"))


RULE = Rule(
    code="SAFE-56",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Temporary joint not looked at running",
    what=(
        "A gauge, a sender or an adapter on the fuel line was looked at primed when it was fitted. When the engine is first started with it, "
        "the next step looks at its joint while the engine runs."
    ),
    why="The running engine shakes a hose that hangs on one thread, over an exhaust that is getting hot.",
    mend="Add the look, act: leak-check, directly after the start.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "  - {do: Look at the joint of the gauge with a lamp., act: leak-check, at: fuel-rail, cautions: [fuel-jet]}\n",
        "",
    ),
    find=find,
)
