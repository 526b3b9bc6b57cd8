"""BASIS-1: number without a basis."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """What the schemas leave open: the numbers of equipment stand under one basis of their record."""
    if amount.basis is None and amount.numbers:
        yield RULE.at(amount.record, f"{field(amount.record, amount.path)} has no basis", path=amount.path, key=True)


RULE = Rule(
    code="BASIS-1",
    level="error",
    scope="value",
    title="Number without a basis",
    what=(
        "Every number says where it comes from. Only minutes, weights, digits and the limits and defaults of a "
        "calculator's inputs need no basis."
    ),
    why="A number that cannot say where it comes from cannot be checked, and cannot be corrected when its source is.",
    mend="Write basis: a source with its place, practice where it is common practice, or the calculator that gives it.",
    example=Example("equipment/vacuum-gauge.yaml", "misleads: none\nbasis: {practice: true}\n", "misleads: none\n"),
    find=find,
    kinds=("equipment",),
)
