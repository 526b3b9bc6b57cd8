"""UNIT-13: instrument that ends under the greatest credible pressure."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Speaks only where no instrument of the named type shows more; a clamped line is UNIT-12."""
    clamps = any(step["act"] == Acts.CLAMP for _i, step in context.procedures.steps_with(record, "act"))
    for i, step in context.procedures.steps_with(record, "takes") if not clamps else ():
        takes = step["takes"]
        there = context.instruments.of(takes.get("instrument", ""), takes.get("reading", ""))
        short = list(context.instruments.too_short(record, takes.get("instrument", ""), takes.get("reading", "")))
        if short and len(short) == len(there):
            message = f"{either(one.id for one, _ in short)} ends at or under {short[0][1]}"
            yield RULE.at(record, f"step {i + 1}: {message}", path=("steps", i, "takes", "instrument"))


RULE = Rule(
    code="UNIT-13",
    level="advice",
    scope="record",
    title="Instrument that ends under the greatest credible pressure",
    what=(
        "The instrument that a step names, or every one of its type, shows more than the greatest credible "
        "pressure of the path that it measures."
    ),
    why="A fault can bring the pressure there; the gauge is then over-ranged, and reads wrong from then on.",
    mend="Name an instrument with a higher range where there is one, or say in the record what keeps the pressure away.",
    example=Example("equipment/scan-tool.yaml", "range: {min: 0, max: 6000", "range: {min: 0, max: 4000"),
    find=find,
    kinds=("procedures",),
    excusable=True,
)
