"""SAFE-12: a procedure needs a state that no procedure makes."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    machine, procedures = context.procedures.machine, context.book.of("procedures")
    for i, state in enumerate(record.data["needs"]["states"]):
        known = machine.states.get(state)
        if known is None or not (known.connection or state in machine.guards) or known.set_by:
            continue
        if not context.procedures.said_by_others(record, state, "leaves", "makes"):
            makers = [procedures[id] for id in context.procedures.makers(state) if id != record.id]
            message = f"no procedure of these systems makes {machine.named(state)}, which this one needs"
            yield RULE.at(
                record,
                message,
                f"Write the procedure that leaves it, or add the system to one that does{_such(makers)}.",
                ("needs", "states", i),
            )


def _such(makers: list[Record]) -> str:
    return f", such as {makers[0].id}" if makers else ""


RULE = Rule(
    code="SAFE-12",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Needs what nobody makes",
    what="A connection or a safe state in `needs` is made by another procedure of the same system: it sets the state or leaves it.",
    why="A technician who is told that the gauge is on the rail, and finds no page that puts it there, improvises.",
    mend="Write the procedure that makes the state, or take it out of needs.",
    example=Example(
        "procedures/read-high-side.yaml",
        "needs: {states: none,",
        "needs: {states: [gauge-on-rail],",
    ),
    find=find,
)
