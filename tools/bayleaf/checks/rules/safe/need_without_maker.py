"""SAFE-62: a procedure begins with a safe state, and does not say what makes it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    machine, needs = context.procedures.machine, record.data["needs"]
    procedures = context.book.of("procedures")
    makers = [procedures[id] for id in needs.get("made_by", []) if id in procedures and procedures[id].sound]
    for i, state in enumerate(needs["states"]):
        if state not in machine.guards:
            continue
        made = [r for r in makers if r.id != record.id and _makes(r, state, context)]
        lacking = [s for s in record.data["systems"] if not any(_serves(r, s) for r in made)]
        if not made or lacking:
            of = f" of {', '.join(lacking)}" if made else ""
            words = f"it begins with {machine.named(state)}, and made_by names no procedure{of} that makes it so"
            known = [id for id in context.procedures.makers(state) if id != record.id]
            help = f"Write needs: made_by, such as [{known[0]}], or follow it in the steps." if known else ""
            yield RULE.at(record, words, help, ("needs", "states", i))
    for n, maker in enumerate(makers):
        if not any(state in machine.guards and _makes(maker, state, context) for state in needs["states"]):
            words = f"made_by names {maker.id}, which makes no safe state that this procedure begins with"
            yield RULE.at(record, words, "Take it out.", ("needs", "made_by", n))


def _makes(record: Record, state: str, context: Context) -> bool:
    """Whether a state stands at the end of a procedure because one of its steps made it."""
    return any(s == state and since >= 0 for (s, _at), since in context.procedures.walk(record).end.items())


def _serves(record: Record, system: str) -> bool:
    return not record.data["systems"] or system in record.data["systems"]


RULE = Rule(
    code="SAFE-62",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Safe state from nowhere",
    what=(
        "A procedure that begins with a state that makes something safe names in needs.made_by the procedures that make it, and for each of its "
        "systems one of them does: a step of it makes the state, and it still stands at its end."
    ),
    why="A state in needs is a hope. Whoever opens the page at the bench has to see what comes first.",
    mend="Name the procedure in needs.made_by, or follow it in the steps.",
    example=Example(
        "procedures/fit-gauge.yaml",
        "needs: {states: none, has: [fuel-test-port]",
        "needs: {states: [fuel-pressure-relieved], has: [fuel-test-port]",
    ),
    find=find,
)
