"""UNIT-10: decimal point that may have slipped."""

from __future__ import annotations

import math
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import either, field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding

_WORDS = {-2: "a hundredth of", -1: "a tenth of", 1: "ten times", 2: "a hundred times"}


def find(context: Context) -> Iterator[Finding]:
    """Compares every limit with the middle one of its neighbours in the same family."""
    for neighbours in context.bands.by_family().values():
        for own in neighbours if len(neighbours) > 1 else ():
            for side in ("min", "max"):
                mine, path = _si(own, side), (*own.path, side)
                others = sorted(v for n in neighbours if n is not own and (v := _si(n, side)))
                if not mine or not others:
                    continue
                slip = math.log10(abs(mine / others[len(others) // 2]))
                tens = round(slip)
                if tens in _WORDS and abs(slip - tens) < 0.12:
                    them = either(sorted({n.record.id for n in neighbours if n.record is not own.record})[:3], "and")
                    yield RULE.at(
                        own.record, f"{field(own.record, path)} is about {_WORDS[tens]} that of {them}", path=path
                    )


def _si(amount: Amount, side: str) -> float | None:
    value = amount.numbers.get((*amount.path, side))
    return None if value is None else amount.si(value)


RULE = Rule(
    code="UNIT-10",
    level="warning",
    scope="book",
    title="Decimal point that may have slipped",
    what=(
        "The band of a reading is not ten or a hundred times, or a tenth or a hundredth of, what the other "
        "systems of the same family and their vehicles have for it."
    ),
    why="A slipped decimal point gives a band that looks complete and is inside every plausible limit.",
    mend="Compare with the records that the message names; if both are right, except the rule with the reason.",
    example=Example("vehicles/parks-van.yaml", "{min: 42.5, max: 48.5, unit: psi", "{min: 4.25, max: 4.85, unit: psi"),
    find=find,
    excusable=True,
)
