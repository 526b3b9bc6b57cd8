"""SAFE-50: fuel is let out, and nothing protects the eyes."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.preparations import preparations
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    opening = context.procedures.walk(record).doing(Acts.OPEN_JOINT, Acts.BLEED, Acts.PRESSURISE)
    if not opening:
        return
    procedures, equipment = context.book.of("procedures"), context.book.of("equipment")
    ready = [record, *(procedures[p] for p in preparations(context.book, record.data) if p in procedures)]
    at_hand = [
        e for r in ready if r.sound for e in r.data["needs"]["equipment"] if e in equipment and equipment[e].sound
    ]
    if any(equipment[e].data["protective"] for e in at_hand):
        return
    message = f"step {opening[0].number} is to {context.procedures.machine.title(opening[0].data['act'])}, and neither the procedure nor a preparation has protective equipment"
    yield RULE.at(record, message, path=(*opening[0].place, "act"))


RULE = Rule(
    code="SAFE-50",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Eyes without protection",
    what="A procedure that opens a joint, bleeds or pressurises has protective equipment in its list or in that of a preparation.",
    why="What leaves a joint leaves it at the height of the eyes.",
    mend="Inherit the preparation in which the glasses are put on, or add them to needs and to a step.",
    example=Example(
        "procedures/bay-preparation.yaml",
        "equipment: [safety-glasses], consumables: none, people: 1}",
        "equipment: none, consumables: none, people: 1}",
    ),
    find=find,
)
