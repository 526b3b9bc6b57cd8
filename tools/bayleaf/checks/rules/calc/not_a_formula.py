"""CALC-1: expression that is no formula."""

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
    code="CALC-1",
    level="error",
    scope="record",
    title="Expression that is no formula",
    what=(
        "An expression is made of names, small whole numbers, + - * / **, comparisons, if and the listed "
        "functions, within its limits of size, depth and cost."
    ),
    why="A formula is proved, evaluated and written again in JavaScript; what is outside the grammar could not be.",
    mend="Write it with what the grammar has; a number with a meaning goes into constants, with its basis.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "across: rail - gauge(manifold_vacuum)",
        "across: rail - gauge(manifold_vacuum",
    ),
    find=find,
    kinds=("calculators",),
)
