"""CALC-10: result that is not plausible."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Only what the page shows without a hand on it."""
    ready = context.calculators.proof(record).ready
    for problem in context.calculators.problems(record):
        if ready is not None and problem.what == "not plausible":
            result = ready.results[problem.line]
            message = f"{problem.line} is {result.text(problem.x)} {result.symbol} at {problem.inputs}, which is not plausible"
            yield RULE.at(record, message, path=("formula", problem.line))


RULE = Rule(
    code="CALC-10",
    level="error",
    scope="record",
    title="Result that is not plausible",
    what="At its defaults and over its table a calculator gives results inside the plausible limits of their quantity.",
    why="A result that cannot be is a slip in the formula, or a table that asks for what nobody has.",
    mend="Look at the formula and its units; then at the values of the table.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "across: rail - gauge(manifold_vacuum)",
        "across: 4 * (rail - gauge(manifold_vacuum))",
    ),
    find=find,
    kinds=("calculators",),
)
