"""SAFE-3: a temporary state is set and never ended."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import called, part, spot
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk, machine = context.procedures.walk(record), context.procedures.machine
    for (id, at), since in walk.end.items():
        state = machine.states[id]
        if (
            since < 0
            or not state.forbids
            or state.connection
            or Acts.LEAK_CHECK in state.ended_by
            or id in record.data["leaves"]
        ):
            continue
        enders = [f"act: {act}" + (f", at: {at}" if at else "") for act in sorted(state.ended_by)]
        help = (
            f"Add the step that ends it ({either(enders)}), or declare it in leaves."
            if enders
            else f"Put back what was taken off{part(at)}, or declare it in leaves."
        )
        yield RULE.at(
            record,
            f"{called(walk, since)} begins {machine.named(id)}{part(at)}, and nothing ends it",
            help,
            spot(record, walk.steps[since], "sets", "act"),
        )


RULE = Rule(
    code="SAFE-3",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Temporary state never ended",
    what=(
        "A state that forbids anything is temporary. A step that sets one is followed by the step that ends it, unless the "
        "procedure declares it in `leaves` and another one of the same system ends it."
    ),
    why="Whoever comes next does not know that the joint is open, the engine runs or the fuse is out.",
    mend="Add the step that ends the state.",
    example=Example("procedures/read-high-side.yaml", "\n  - {do: Stop the engine., act: stop-engine}", ""),
    find=find,
)
