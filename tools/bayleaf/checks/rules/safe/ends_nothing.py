"""SAFE-13: `ends` names what did not stand, or nothing is taken off."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    done = {act for step in walk.steps for act in step.own}
    for i, state in enumerate(record.data.get("ends", [])):
        known = machine.states.get(state)
        if known is None:
            continue
        stood = any(k[0] == state for k in walk.start) or any(
            n.kind == "set" and n.what == state for s in walk.steps for n in s.notes
        )
        if not stood:
            message = f"ends names {machine.named(state)}, which does not stand at the start"
            yield RULE.at(record, message, f"Write needs: {{states: [{state}]}}, or take it out of ends.", ("ends", i))
        elif known.connection and not done & machine.local:
            message = f"ends names {machine.named(state)}, and no step takes anything off"
            yield RULE.at(record, message, "Add the steps that take it off, each with its act.", ("ends", i))


RULE = Rule(
    code="SAFE-13",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Ends what is not there",
    what="A state in `ends` is in `needs`, or a step of the procedure set it; a connection is taken off by a step.",
    why="A word does not unscrew a gauge, and a procedure that ends what it never needed is a slip in one of the two fields.",
    mend="Name the state in needs, or take it out of ends.",
    example=Example("procedures/take-gauge-off.yaml", "needs: {states: [gauge-on-rail],", "needs: {states: none,"),
    find=find,
)
