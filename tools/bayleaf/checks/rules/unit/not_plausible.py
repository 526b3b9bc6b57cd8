"""UNIT-2: number outside the plausible limits."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import implausible
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """Every number but those of a job's readings, of bands (UNIT-3) and of differences (UNIT-6)."""
    if not amount.known or amount.record.kind == "quantities":
        return
    for path, said in implausible(amount):
        yield RULE.at(amount.record, said, path=path)


RULE = Rule(
    code="UNIT-2",
    level="error",
    scope="value",
    title="Number outside the plausible limits",
    what=(
        "A number lies inside the plausible limits of its quantity. What is read in a job is exempt: there it is "
        "a verdict."
    ),
    why="Plausible limits are wide; outside them a number is a slip of the decimal point, of the unit or of the key.",
    mend=(
        "Look at the decimal point and at the unit; if the number is right, a maintainer widens the limits of the"
        " quantity."
    ),
    example=Example("vehicles/parks-van.yaml", "value: 120, unit: m", "value: 12000, unit: m"),
    find=find,
    roles=("value", "range"),
)
