"""CALC-2: formula whose dimensions do not close."""

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
    code="CALC-2",
    level="error",
    scope="record",
    title="Formula whose dimensions do not close",
    what=(
        "Every line of a formula closes in dimension and in reference, every name in it exists, and each result "
        "is what its quantity says."
    ),
    why=(
        "Gauge, absolute, difference and vacuum differ by a whole atmosphere or by a sign; a sum of two of them "
        "is wrong however plausible it looks."
    ),
    mend="Convert in the formula with absolute, gauge, vacuum or above_ambient, or correct the quantity.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "across: rail - gauge(manifold_vacuum)",
        "across: rail + manifold_vacuum",
    ),
    find=find,
    kinds=("calculators",),
)
