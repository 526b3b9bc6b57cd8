"""CALC-9: undefined inside the stated limits."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """The corners, middles and inside of the ranges, and the table."""
    for problem in context.calculators.problems(record):
        if problem.what == "undefined":
            yield RULE.at(
                record, f"the line {problem.line} is undefined at {problem.inputs}", path=("formula", problem.line)
            )


RULE = Rule(
    code="CALC-9",
    level="error",
    scope="record",
    title="Undefined inside the stated limits",
    what=(
        "Over the limits of its inputs a calculator never divides by zero, takes the root of a negative number or"
        " runs over."
    ),
    why="A field that accepts a value must answer it.",
    mend="Narrow the limits of an input, or write the formula so that it holds.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "across: rail - gauge(manifold_vacuum)",
        "across: (rail - gauge(manifold_vacuum)) * (rail - gauge(manifold_vacuum)) / (rail - gauge(manifold_vacuum))",
    ),
    find=find,
    kinds=("calculators",),
)
