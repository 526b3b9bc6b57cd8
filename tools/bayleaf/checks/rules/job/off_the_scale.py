"""JOB-8: value off the scale of its instrument."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import Amount
from bayleaf.checks.messages import number
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.verdicts.instrument import instrument_of
from bayleaf.finding import Finding


def find(amount: Amount, context: Context) -> Iterator[Finding]:
    """The number that was typed, in the unit that it was typed in."""
    if not amount.known:
        return
    entry = amount.record.data["readings"][amount.path[1]]
    instrument = instrument_of(context.book, entry["instrument"], amount.quantity)
    if instrument and not instrument.reaches(amount.si(entry["value"])):
        message = f"{number(entry['value'])} {entry['unit']} is off the scale of {instrument.id}"
        yield RULE.at(amount.record, message, path=(*amount.path, "value"))


RULE = Rule(
    code="JOB-8",
    level="error",
    scope="value",
    title="Value off the scale of its instrument",
    what="A value lies inside the range of the instrument that it was read with.",
    why="A needle cannot show it: the value, the unit or the instrument is wrong.",
    mend="Look at the unit, and at which instrument was used.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "value: 35, unit: psi, instrument: gauge-0-100",
        "value: 135, unit: psi, instrument: gauge-0-100",
    ),
    find=find,
    roles=("reading",),
)
