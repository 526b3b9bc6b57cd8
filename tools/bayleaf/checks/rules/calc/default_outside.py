"""CALC-3: default outside the limits of its input."""

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
    code="CALC-3",
    level="error",
    scope="record",
    title="Default outside the limits of its input",
    what="The default of an input lies between its lower and its upper limit.",
    why="The page would open with a value that it refuses.",
    mend="Move the default or the limits.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "default: 35, min: 0, max: 100",
        "default: 135, min: 0, max: 100",
    ),
    find=find,
    kinds=("calculators",),
)
