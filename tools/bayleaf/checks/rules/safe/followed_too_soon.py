"""SAFE-32: a procedure is followed before what it needs is there."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, noted, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for step, note in noted(context.procedures, record, "unmet"):
        index = walk.steps.index(step)
        ended = walk.last("ended", note.what, index)
        how = f"{called(walk, ended)} ended it" if ended is not None else "no step before it makes it so"
        message = f"{step_name(walk, step)} follows {step.data['follow']}, which needs {machine.named(note.what)}, and that does not stand: {how}"
        makers = [m for m in context.procedures.makers(note.what) if m != record.id]
        help = (
            f"Follow {makers[0]} first, or name the state in needs."
            if makers
            else "Make it so in a step before, or name the state in needs."
        )
        yield RULE.at(record, message, help, (*step.place, "follow"))


RULE = Rule(
    code="SAFE-32",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Followed before it can be done",
    what="When a step follows another procedure, every state that this one needs stands at that moment.",
    why="The followed page begins with a gauge that is not on the rail, or with an engine that is not cool.",
    mend="Make the state in an earlier step, or name it in needs.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "  - {do: Switch the key off., act: key-off}\nresults",
        "  - {do: Switch the key off., act: key-off}\n  - {follow: measure-primed-pressure}\n  - {follow: take-gauge-off}\n  - {follow: measure-primed-pressure}\nresults",
    ),
    find=find,
)
