"""CALC-5: table or chart that does not fit its calculator."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.calculators import complaint
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """What the proof says and puts down to this rule."""
    return complaint(RULE, record, context.calculators)


RULE = Rule(
    code="CALC-5",
    level="error",
    scope="record",
    title="Table or chart that does not fit its calculator",
    what=(
        "A table varies one input down and at most one other across, a chart one input and the lines of the "
        "table, and both say which result when there are several; or they set several results beside each other. "
        "A chart has one unit, and a span: that of the table or its own."
    ),
    why="Otherwise the page has nothing to print, or prints the wrong thing.",
    mend="Name inputs and results as the calculator does.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "columns: {manifold_vacuum: [15, 18, 21]}",
        "columns: {manifold_vacum: [15, 18, 21]}",
    ),
    find=find,
    kinds=("calculators",),
)
