"""BASIS-7: calculator that rests on itself."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every basis inside a calculator."""
    for path, basis in context.references.bases(record):
        if basis.get("calculator") == record.id:
            yield RULE.at(record, f"{field(record, path)} names the calculator itself", path=path)


RULE = Rule(
    code="BASIS-7",
    level="error",
    scope="record",
    title="Calculator that rests on itself",
    what="The basis of a calculator, of its constants and of its worked checks is something else than that calculator.",
    why="A formula that proves itself proves nothing.",
    mend="Name the source of the formula, or practice.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "basis: {practice: true}",
        "basis: {calculator: pressure-across-injector-idle}",
    ),
    find=find,
    kinds=("calculators",),
)
