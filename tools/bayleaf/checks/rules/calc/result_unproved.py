"""CALC-14: result that no check proves."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """By name."""
    asked = {name for check in record.data["checks"] for name in check["gives"]}
    for name in record.data["result"]:
        if name not in asked:
            yield RULE.at(record, f"no worked check asks for {name}", path=("result", name), key=True)


RULE = Rule(
    code="CALC-14",
    level="warning",
    scope="record",
    title="Result that no check proves",
    what="Every result of a calculator is asked for by at least one worked check.",
    why="A result that nobody checked is a number without a basis.",
    mend="Add it to gives of a check.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "result:\n",
        "result:\n  again: {quantity: pressure-across-injector, unit: psi, digits: 3}\n",
    ),
    find=find,
    kinds=("calculators",),
)
