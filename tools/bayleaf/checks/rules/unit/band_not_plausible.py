"""UNIT-3: band outside the plausible limits."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import implausible
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(amount: Amount, _context: Context) -> Iterator[Finding]:
    """The limits of a reading, general or the maker's."""
    for path, said in implausible(amount) if amount.known else ():
        yield RULE.at(amount.record, said, path=path)


RULE = Rule(
    code="UNIT-3",
    level="error",
    scope="value",
    title="Band outside the plausible limits",
    what="Both limits of a band lie inside the plausible limits of its quantity.",
    why="A verdict compares with the band; with a limit that cannot occur, a reading is never low or never high.",
    mend="Look at the decimal point and at the unit of the band.",
    example=Example(
        "systems/port-injection-return.yaml",
        "rail-pressure-primed: {min: 36, max: 65",
        "rail-pressure-primed: {min: 36, max: 650",
    ),
    find=find,
    roles=("band",),
)
