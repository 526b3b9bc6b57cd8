"""UNIT-5: value below an absolute zero, or a signed vacuum."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import field, number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """Numbers of quantities that are absolute or a vacuum, a job's readings too."""
    if not amount.known or amount.quantity.reference not in ("absolute", "vacuum"):
        return
    for path, value in amount.numbers.items():
        if amount.si(value) < 0:
            message = (
                "a vacuum is a positive number"
                if amount.quantity.reference == "vacuum"
                else "nothing is below absolute zero"
            )
            yield RULE.at(
                amount.record, f"{field(amount.record, path)} is {number(value)} {amount.unit}; {message}", path=path
            )


RULE = Rule(
    code="UNIT-5",
    level="error",
    scope="value",
    title="Value below an absolute zero, or a signed vacuum",
    what="An absolute pressure or temperature is not below zero, and a vacuum is a positive number.",
    why=(
        "A vacuum written as a negative number is read as a pressure above the atmosphere by the next person and "
        "by every formula."
    ),
    mend="Write 18 for eighteen inches of vacuum; the quantity says already that it is one.",
    example=Example(
        "systems/port-injection-return.yaml",
        "manifold-vacuum-idle: {min: 12, max: 22",
        "manifold-vacuum-idle: {min: -22, max: -12",
    ),
    find=find,
    roles=("band", "range", "value", "reading"),
)
