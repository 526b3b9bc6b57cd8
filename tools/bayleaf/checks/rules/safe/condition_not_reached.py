"""SAFE-33: a step is done in a condition that the steps before it have not made."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, noted, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for step, note in noted(context.procedures, record, "claimed", "contradicted"):
        when = step.when
        if note.kind == "contradicted":
            message = f"{step_name(walk, step)} is done at {when}, and {called(walk, note.since)} was to {machine.title(note.what)}, which still goes on"
            yield RULE.at(
                record, message, f"Put a step with act: {note.other} before it.", spot(record, step, "when", "takes")
            )
        elif note.what in machine.guards or machine.states[note.what].forbids:
            ended = walk.last("ended", note.what, walk.steps.index(step))
            how = f"{called(walk, ended)} ended it" if ended is not None else "no step makes it so"
            message = f"{step_name(walk, step)} is done at {when}, and {machine.named(note.what)} does not stand: {how}"
            makers = sorted(machine.states[note.what].set_by)
            help = (
                f"Put a step with act: {makers[0]} before it, or name the state in needs."
                if makers
                else "Set the state in a step before, or name it in needs."
            )
            yield RULE.at(record, message, help, spot(record, step, "when", "takes"))


RULE = Rule(
    code="SAFE-33",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Condition that nothing has made",
    what=(
        "A condition says what holds during a step: the engine runs, the exhaust is cool, the key is off. The steps before it, a "
        "preparation or `needs` have made it so, and nothing has undone it."
    ),
    why="A sentence does not start an engine or cool an exhaust; a joint opened in the belief that it did is opened hot.",
    mend="Add the step that makes the condition true.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "  - {do: Start the engine and wait until it is hot., act: start-engine}\n",
        "",
    ),
    find=find,
)
