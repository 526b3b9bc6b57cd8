"""SAFE-46: a refitted joint is not looked at with the engine running."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, part, spot
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts, States


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    if not any(Acts.START_ENGINE in s.own for s in walk.steps):
        return  # its look is primed only; SAFE-7 sees to that
    for step in walk.own:
        joints = [n.at for n in step.notes if n.kind == "set" and Acts.LEAK_CHECK in machine.states[n.what].ended_by]
        if not joints or any(machine.states[n.what].connection for n in step.notes if n.kind == "set"):
            continue
        index = walk.steps.index(step)
        later = walk.steps[index + 1 :]
        for at in joints:
            reopened = any(Acts.OPEN_JOINT in s.own and at in s.at for s in later)
            looked = any(
                Acts.LEAK_CHECK in s.own and s.stands(States.RUNNING) and (not s.at or at in s.at) for s in later
            )
            if not reopened and not looked:
                message = f"{called(walk, index)} closes a joint{part(at)}, the engine runs later, and nobody looks at the joint then"
                yield RULE.at(record, message, path=spot(record, step, "act"))


RULE = Rule(
    code="SAFE-46",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Refitted joint not looked at while running",
    what=(
        "A joint is looked at primed, before the engine is cranked. Where a procedure starts the engine after it has closed a joint, it "
        "is looked at again while the engine runs."
    ),
    why="A running engine shakes and heats the joint, and the pump holds it under pressure; what was dry when primed may drip now.",
    mend="Add a leak check while the engine runs, and once more when it is hot.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "  - {do: Switch the key off., act: key-off}\nresults",
        "  - {do: Start the engine., act: start-engine}\n  - {do: Stop the engine., act: stop-engine}\nresults",
    ),
    find=find,
)
