"""SAFE-7: a joint is refitted and nobody looks whether it leaks."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, part, spot
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for (id, at), since in walk.end.items():
        if since < 0 or Acts.LEAK_CHECK not in machine.states[id].ended_by:
            continue
        message = f"{called(walk, since)} closes a joint{part(at)}, and no later step looks whether it leaks"
        help = f"Add steps that bring up the pressure and then look: act: leak-check{f', at: {at}' if at else ''}."
        yield RULE.at(record, message, help, spot(record, walk.steps[since], "act"))


RULE = Rule(
    code="SAFE-7",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Refitted joint without a leak check",
    what=(
        "A joint that was closed counts as leaking until it was looked at under pressure. The look is a step of its own for "
        "every joint, also for the gauge's own, and nothing in `leaves` excuses it."
    ),
    why="A seal that was pinched on the way in holds for a minute and sprays on the road.",
    mend="Add a leak check of this joint after the pressure is up and before the engine is cranked.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "  - {do: Look at the port with a lamp., act: leak-check, at: fuel-test-port, cautions: [fuel-jet, stop-at-any-leak]}\n",
        "",
    ),
    find=find,
)
