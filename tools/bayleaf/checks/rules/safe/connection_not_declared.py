"""SAFE-9: a connection stays on the car and `leaves` does not say so."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, spot
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for (id, _at), since in walk.end.items():
        if since >= 0 and machine.states[id].connection and id not in record.data["leaves"]:
            message = f"{called(walk, since)} begins {machine.named(id)}, which still stands at the end, and leaves does not say so"
            yield RULE.at(
                record, message, f"Write leaves: [{id}], or take it off.", spot(record, walk.steps[since], "sets")
            )


RULE = Rule(
    code="SAFE-9",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Connection left on in silence",
    what="A connection serves several readings and may stay on the car after a procedure, when `leaves` declares it.",
    why="What is not declared is not taken off: no other procedure knows that there is anything to end.",
    mend="Declare the connection in leaves, or take it off.",
    example=Example("procedures/fit-gauge.yaml", "leaves: [gauge-on-rail]", "leaves: none"),
    find=find,
)
