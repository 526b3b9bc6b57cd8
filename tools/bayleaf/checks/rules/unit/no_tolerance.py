"""UNIT-6: tolerance, error or step that cannot be."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import field, number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """Every number that is a difference."""
    if not amount.known:
        return
    low, high = amount.quantity.plausible
    for path, value in amount.numbers.items():
        if not 0 < amount.si(value) < high - low:
            yield RULE.at(
                amount.record,
                f"{field(amount.record, path)} is {number(value)} {amount.unit}, which cannot be",
                path=path,
            )


RULE = Rule(
    code="UNIT-6",
    level="error",
    scope="value",
    title="Tolerance, error or step that cannot be",
    what=(
        "A tolerance, an error, a resolution or a readability is more than zero and less than the whole plausible"
        " span of its quantity."
    ),
    why="With zero every reading is wrong; with more than the span every reading is right.",
    mend="Look at the decimal point and at the unit.",
    example=Example("equipment/vacuum-gauge.yaml", "readability: {value: 0.5", "readability: {value: 50"),
    find=find,
    roles=("width",),
)
