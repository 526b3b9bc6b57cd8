"""SAFE-19: a pump runs into an open end with no quantity at which it stops."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    stopping = {s.id for s in machine.states.values() if s.stops}
    for step in walk.own:
        if step.had.isdisjoint(stopping):
            continue
        state = next(
            ((s, since) for (s, _at), since in step.before.items() if s in machine.states and machine.states[s].stops),
            None,
        )
        ended = state is not None and not any(s == state[0] for s, _at in step.after)
        if state is None or ended or "stop_at" in step.data:
            continue
        ran = any("stop_at" in s.data for s in walk.steps[state[1] + 1 : walk.steps.index(step)])
        if Acts.ENERGISE_PUMP in step.own or (Acts.ENERGISE_PUMP in step.acts and not ran):
            message = f"{step_name(walk, step)} runs the pump with {machine.named(state[0])} since {called(walk, state[1])}, and no quantity says when to stop"
            yield RULE.at(record, message, path=spot(record, step, "act", "when"))


RULE = Rule(
    code="SAFE-19",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="No quantity at which to stop",
    what="While fuel is led into a container, every step that runs the pump has a `stop_at`: the quantity at which it stops.",
    why="A pump fills a container in seconds and the floor in the next ones.",
    mend="Write stop_at with the quantity and its basis.",
    example=Example(
        "procedures/measure-volume.yaml",
        "    stop_at: {value: 0.5, unit: L, basis: {practice: true}}\n",
        "",
    ),
    find=find,
)
