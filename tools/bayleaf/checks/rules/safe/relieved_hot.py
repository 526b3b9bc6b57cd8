"""SAFE-53: a relief that the heat of the engine will undo."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, noted, spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    cooled = [s.id for s in machine.setters.get(Acts.COOL_DOWN, ())]
    warmed = {s.id for s in machine.states.values() if Acts.COOL_DOWN in s.ended_by and not s.set_by}
    for step, note in noted(context.procedures, record, "set", of=warmed) if cooled else ():
        if step.source != record.id or step.had & set(cooled):
            continue
        ended = walk.last("ended", cooled[0], walk.steps.index(step))
        how = f"{called(walk, ended)} ended it" if ended is not None else "no step has made it so"
        message = f"{step_name(walk, step)} begins {machine.named(note.what)}, which heat undoes, and {machine.named(cooled[0])} does not stand: {how}"
        yield RULE.at(record, message, path=spot(record, step, "sets", "proves"))


RULE = Rule(
    code="SAFE-53",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Relieved before it was cool",
    what="A relief that ends when an engine cools down from hot is made only after the engine has cooled.",
    why="Heat goes on into the rail after the stop, and the pressure that was let off comes back while the sheet says that it is gone.",
    mend="Let engine and exhaust cool in a step before it: cool first, relieve last.",
    example=Example(
        "procedures/relieve-fuel-pressure.yaml", "  - {do: Let the engine and the exhaust cool., act: cool-down}\n", ""
    ),
    find=find,
)
