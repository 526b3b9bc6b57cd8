"""CALC-6: worked check that does not fit its calculator."""

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
    code="CALC-6",
    level="error",
    scope="record",
    title="Worked check that does not fit its calculator",
    what="A worked check gives inputs that exist, inside their limits, and asks for results that exist.",
    why="A check that cannot be run proves nothing.",
    mend="Name inputs and results as the calculator does, or widen the limits of the input.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "given: {rail: {value: 50, unit: psi}, manifold_vacuum: {value: 10, unit: inHg}}",
        "given: {rail: {value: 150, unit: psi}, manifold_vacuum: {value: 10, unit: inHg}}",
    ),
    find=find,
    kinds=("calculators",),
)
