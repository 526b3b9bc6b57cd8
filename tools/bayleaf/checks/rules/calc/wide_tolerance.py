"""CALC-11: worked check that proves little."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """Not for temperatures, whose zero is arbitrary, and not for a value of zero."""
    if not amount.known or amount.quantity.dimension == (0, 0, 0, 1, 0):
        return
    check = amount.record.data["checks"][amount.path[1]]["gives"][amount.path[3]]
    if check["value"] and check["unit"] in amount.quantity.units:
        share = amount.si(check["within"]["value"]) / abs(amount.quantity.si(check["value"], check["unit"]))
        if share > 0.05:
            yield RULE.at(
                amount.record, f"check {amount.path[1] + 1}: within is {share:.0%} of the value", path=amount.path
            )


RULE = Rule(
    code="CALC-11",
    level="warning",
    scope="value",
    title="Worked check that proves little",
    what="The tolerance of a worked check is at most five percent of its value.",
    why="With a wide tolerance a wrong formula passes.",
    mend="Take an example that is given more exactly, or work it by hand.",
    example=Example(
        "calculators/pressure-across-injector-idle.yaml",
        "within: {value: 0.1, unit: kPa}",
        "within: {value: 40, unit: kPa}",
    ),
    find=find,
    kinds=("calculators",),
    roles=("width",),
)
