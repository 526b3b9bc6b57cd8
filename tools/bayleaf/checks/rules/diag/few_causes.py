"""DIAG-3: a symptom with fewer than two causes."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.spared import disturbed
from bayleaf.finding import Finding
from bayleaf.records import Record

NAMED = 3  # how many faults are proposed


def find(record: Record, context: Context) -> Iterator[Finding]:
    if record.data.get("status") == "retired":
        return
    causes = context.claims.felt.get(record.id, [])
    if len(causes) < 2:
        message = f"only {causes[0]} is felt so" if causes else "no fault is felt so"
        alike = _alike(context, causes[0]) if causes else []
        help = f"Ask of what disturbs the same whether it is felt so too: {either(alike[:NAMED])}." if alike else ""
        yield RULE.at(record, message, help, ("title",))


def _alike(context: Context, cause: str) -> list[str]:
    """The other faults that disturb something that this one disturbs."""
    faults = context.book.of("faults")
    mine = set(disturbed(context.book, faults[cause]))
    return [f for f in context.claims.faults if f != cause and mine & set(disturbed(context.book, faults[f]))]


RULE = Rule(
    code="DIAG-3",
    level="error",
    scope="record",
    kinds=("symptoms",),
    title="Symptom with fewer than two causes",
    what="At least two faults name a symptom in `felt_as`.",
    why="With one cause there is nothing to diagnose, and the real cause of the next car is not in the book.",
    mend="Name the symptom in the felt_as of every fault that is felt so.",
    example=Example("faults/regulator-hose-off.yaml", "felt_as: {rough-idle: always}", "felt_as: none"),
    find=find,
)
