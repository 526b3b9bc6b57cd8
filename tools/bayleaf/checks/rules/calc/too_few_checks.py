"""CALC-8: fewer than three worked checks."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Checks with the same inputs count once."""
    given = {
        repr(sorted((name, one["value"], one["unit"]) for name, one in c["given"].items()))
        for c in record.data["checks"]
    }
    if len(given) < 3:
        yield RULE.at(
            record,
            f"{len(given)} worked check{'s' * (len(given) != 1)} with inputs of their own, and three are needed",
            path=("checks",),
            key=True,
        )


RULE = Rule(
    code="CALC-8",
    level="error",
    scope="record",
    title="Fewer than three worked checks",
    what="A calculator has at least three worked checks, each with other inputs, published or worked by hand.",
    why="One point fits many formulas; three points that differ fit few.",
    mend="Add checks from outside; where nothing is published, work one by hand and write the working in words.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        (
            "given: {rail: {value: 50, unit: psi}, manifold_vacuum: {value: 10, unit: inHg}}\n"
            "    gives: {across: {value: 54.91"
        ),
        (
            "given: {rail: {value: 35, unit: psi}, manifold_vacuum: {value: 18, unit: inHg}}\n"
            "    gives: {across: {value: 43.84"
        ),
    ),
    find=find,
    kinds=("calculators",),
)
