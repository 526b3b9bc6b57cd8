"""SAFE-11: a state is left on purpose, and no procedure ends it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    if record.data.get("standing"):
        return
    for i, state in enumerate(record.data["leaves"]):
        known = context.procedures.machine.states.get(state)
        if known is None or not (known.forbids or known.connection):
            continue
        if not context.procedures.said_by_others(record, state, "ends"):
            others = context.procedures.that_say("ends", state)
            where = " on these systems" if others else ""
            message = f"no procedure ends {context.procedures.machine.named(state)}{where}, which this one leaves"
            yield RULE.at(
                record, message, f"Write the procedure that takes it off again, with ends: [{state}].", ("leaves", i)
            )


RULE = Rule(
    code="SAFE-11",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Nobody ends what is left",
    what="For every temporary state that a procedure leaves, another procedure of the same system has it in `ends`.",
    why="A gauge that the book knows how to fit and not how to take off goes home with the customer.",
    mend="Write the procedure that ends the state.",
    example=Example("procedures/take-gauge-off.yaml", "\nends: [gauge-on-rail]", ""),
    find=find,
)
