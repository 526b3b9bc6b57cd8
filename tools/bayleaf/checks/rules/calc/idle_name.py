"""CALC-4: name that is idle, doubled or in a circle."""

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
    code="CALC-4",
    level="error",
    scope="record",
    title="Name that is idle, doubled or in a circle",
    what=(
        "Every input, constant and line has a name of its own and is used, no line needs itself, and every result"
        " is a line."
    ),
    why="An input that changes nothing was forgotten in the formula, and the number is wrong without it.",
    mend="Use the name, take it out, or give it another.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "formula:\n",
        "formula:\n  twice: rail - gauge(manifold_vacuum)\n",
    ),
    find=find,
    kinds=("calculators",),
)
