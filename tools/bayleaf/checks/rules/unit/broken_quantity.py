"""UNIT-15: quantity that cannot be used."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field, sentence
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import QuantityError, quantity
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """The quantity says itself what is wrong."""
    try:
        quantity(record.id, record.data)
    except QuantityError as err:
        yield RULE.at(record, f"{field(record, err.path)}: {err.message}", sentence(err.help), err.path)


RULE = Rule(
    code="UNIT-15",
    level="error",
    scope="record",
    title="Quantity that cannot be used",
    what=(
        "A quantity lists units of one dimension that the book knows, in spellings that mean one unit each, and "
        "shows and limits itself in them."
    ),
    why="Every number of the book is read through its quantity; a slip here would turn them all.",
    mend="Correct the entry as the message says; the units of the book are in one table.",
    example=Example(
        "vocabulary/quantities.yaml",
        "  units: {V: [volt, volts], mV: none}",
        "  units: {V: [volt, volts], mA: none}",
    ),
    find=find,
    kinds=("quantities",),
)
