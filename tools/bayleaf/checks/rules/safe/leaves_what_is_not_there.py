"""SAFE-10: `leaves` names a state that does not stand at the end."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    standing = {s for s, _at in walk.end}
    for i, state in enumerate(record.data["leaves"]):
        if state in machine.states and state not in standing:
            ended = walk.last("ended", state, len(walk.steps))
            how = f"{called(walk, ended)} ends it" if ended is not None else "no step sets it"
            message = f"leaves names {machine.named(state)}, which does not stand at the end: {how}"
            yield RULE.at(
                record,
                message,
                f"Write sets: [{state}] at the step that makes it so, or take it out of leaves.",
                ("leaves", i),
            )


RULE = Rule(
    code="SAFE-10",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Leaves what is not there",
    what="Every state in `leaves` is set by a step of the procedure, or stood at its start, and no later step ends it.",
    why="The next procedure starts from what this one leaves; a pressure that is called relieved and is not hurts somebody.",
    mend="Set the state at the step that makes it so, or take it out of leaves.",
    example=Example("procedures/fit-gauge.yaml", ", sets: [gauge-on-rail]", ""),
    find=find,
)
