"""UNIT-17: difference of two unlike readings."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Both readings, and the quantity that the difference is said to be."""
    computed = record.data.get("computed", {})
    if "difference" not in computed:
        return
    of, less = (context.amounts.measured(computed["difference"][side]) for side in ("of", "less"))
    if of and less and (of.dimension, of.reference) != (less.dimension, less.reference):
        message = f"{of.title.lower()} ({of.reference}) less {less.title.lower()} ({less.reference}) is no difference of like things"
        yield RULE.at(record, message, path=("computed", "difference"))
    said = context.desk.quantities.get(computed.get("quantity"))
    if (
        of
        and said
        and (said.dimension != of.dimension or said.reference != ("none" if of.reference == "none" else "difference"))
    ):
        message = f"{said.title.lower()} ({said.reference}) is not the difference of two readings of {of.title.lower()}"
        yield RULE.at(
            record,
            message,
            "Name a quantity of the same dimension whose reference is difference.",
            ("computed", "quantity"),
        )


RULE = Rule(
    code="UNIT-17",
    level="error",
    scope="record",
    title="Difference of two unlike readings",
    what=(
        "A difference is taken between two readings of one dimension and one reference, and what it gives is a "
        "difference."
    ),
    why="Gauge less vacuum, or absolute less gauge, is a number that means nothing until one of them is converted.",
    mend="Take two readings of the same reference, or use a calculator that converts.",
    example=Example(
        "readings/injector-pressure-idle.yaml",
        (
            "  calculator: pressure-across-injector-idle\n"
            "  inputs: {rail: {reading: rail-pressure-idle}, manifold_vacuum: {reading: manifold-vacuum-idle}}"
        ),
        "  difference: {of: rail-pressure-idle, less: manifold-vacuum-idle}",
    ),
    find=find,
    kinds=("readings",),
)
