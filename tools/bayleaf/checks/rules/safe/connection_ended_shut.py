"""SAFE-67: a connection is said to be off, and its joint was never opened."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, listed
from bayleaf.vocabulary import Acts

OFF = frozenset({Acts.OPEN_JOINT, Acts.DISCONNECT})


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for n, state in enumerate(listed(record.data.get("ends"))):
        if state not in machine.states or not machine.states[state].connection:
            continue
        fitted = max((i for i, s in enumerate(walk.steps) if state in s.data.get("sets", [])), default=-1)
        if not any(i > fitted and not OFF.isdisjoint(step.own) for i, step in enumerate(walk.steps)):
            after = f" after step {walk.steps[fitted].number}, which fitted it" if fitted >= 0 else ""
            words = f"{machine.named(state)} ends here, and no step opens a joint{after}"
            yield RULE.at(record, words, path=("ends", n))


RULE = Rule(
    code="SAFE-67",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Taken off without being opened",
    what="A procedure that ends a connection opens a joint, or takes a hose or an instrument off, later than the step that fitted it.",
    why="What is only said to be off drives out of the workshop with the car.",
    mend="Add the step that takes it off, with its act and its part.",
    example=Example(
        "procedures/measure-primed-pressure.yaml",
        "leaves: none\n",
        "leaves: none\nends: [gauge-on-rail]\n",
    ),
    find=find,
)
