"""UNIT-4: lower limit not below the upper."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import field, number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """Every pair of min and max in one unit."""
    low, high = amount.numbers.get((*amount.path, "min")), amount.numbers.get((*amount.path, "max"))
    if low is None or high is None or low < high:
        return
    message = "has no width" if low == high else f"runs from {number(low)} down to {number(high)}"
    yield RULE.at(amount.record, f"{field(amount.record, amount.path)} {message}", path=(*amount.path, "min"))


RULE = Rule(
    code="UNIT-4",
    level="error",
    scope="value",
    title="Lower limit not below the upper",
    what="Where there are two limits, the lower one is less than the upper one.",
    why="With the two exchanged nothing is ever in band; with both alike only one exact value is.",
    mend="Exchange the two, or correct the one that is wrong.",
    example=Example("systems/direct-injection.yaml", "{min: 400, max: 1500", "{min: 1500, max: 400"),
    find=find,
    roles=("band", "range", "value"),
)
