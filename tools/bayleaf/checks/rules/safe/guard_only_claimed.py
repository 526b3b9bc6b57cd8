"""SAFE-60: a state that makes something safe is set by words alone."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import States


def find(record: Record, context: Context) -> Iterator[Finding]:
    machine = context.procedures.machine
    for i, step in context.procedures.steps_with(record, "sets"):
        for n, state in enumerate(step["sets"]):
            # Relief has a rule of its own, which asks where the fuel went.
            if state not in machine.guards or state == States.FUEL_PRESSURE_RELIEVED or machine.states[state].proof:
                continue
            makers = machine.states[state].set_by
            act = step.get("act")
            if act is not None and (not makers or not makers.isdisjoint(machine.acts_of(act))):
                continue
            done = f"is to {machine.title(act)}" if act else "does nothing to a part"
            words = f"step {i + 1} sets {state} and {done}"
            help = (
                f"Write act: {min(makers)} in the step that does it."
                if makers
                else "Name the act and the part in the step that does it."
            )
            yield RULE.at(record, words, help, ("steps", i, "sets", n))
    for n, state in enumerate(record.data["leaves"]):
        walk = context.procedures.walk(record)
        if state in machine.guards and not any(s == state for s, _at in walk.end):
            words = f"leaves names {state}, and no step makes it so"
            yield RULE.at(record, words, path=("leaves", n))


RULE = Rule(
    code="SAFE-60",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Safe by words alone",
    what="A state that makes something safe is set by the act that makes it so: cooling, bonding, pulling the fuse. A step without that act does not set it, and leaves does not name it.",
    why="A sentence that says bonded, cool or dead makes nothing bonded, cool or dead.",
    mend="Name the act in the step that does it.",
    example=Example(
        "procedures/bay-preparation.yaml",
        "car., act: bond}",
        "car., sets: [container-bonded]}",
    ),
    find=find,
)
