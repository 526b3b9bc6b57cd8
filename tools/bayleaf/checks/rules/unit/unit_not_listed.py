"""UNIT-1: unit that its quantity does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import either, field, mean, sentence
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import QuantityError


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """The quantity says itself what is wrong and what was meant."""
    if amount.known or amount.meant is None:
        return
    try:
        amount.quantity.width(1, amount.unit) if amount.role == "width" else amount.quantity.symbol(amount.unit)
    except QuantityError as err:
        message, help = err.message, sentence(err.help)
        if len(amount.choices) > 1:
            known = [u for q in amount.choices for u in q.units]
            message = f"{amount.unit!r} is a unit of nothing that could be meant here"
            help = mean(amount.unit, known, f"It may be {either(q.title.lower() for q in amount.choices)}.")
        yield RULE.at(amount.record, f"{field(amount.record, amount.unit_path)}: {message}", help, amount.unit_path)


RULE = Rule(
    code="UNIT-1",
    level="error",
    scope="value",
    title="Unit that its quantity does not have",
    what="A number is written in one of the units of its quantity, in a spelling that the quantity lists.",
    why=(
        "Gauge or absolute, degrees or a difference of degrees, one pint or another: a unit that is nearly right "
        "gives a number that is wrong. Units are looked up, never guessed."
    ),
    mend="Write one of the units that the message names, or convert the number.",
    example=Example("readings/rail-pressure-primed.yaml", "unit: psi", "unit: psig"),
    find=find,
)
