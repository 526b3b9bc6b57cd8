"""UNIT-16: electrical reading without its two points."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import units
from bayleaf.records import Record

_ELECTRICAL = {units()["V"].dimension, units()["ohm"].dimension}


def find(record: Record, context: Context) -> Iterator[Finding]:
    """By the dimension of what the reading measures."""
    quantity = context.amounts.measured(record.id) if "quantity" in record.data else None
    if quantity and quantity.dimension in _ELECTRICAL and "between" not in record.data:
        yield RULE.at(
            record, f"{quantity.title.lower()} is read between two points, and none are named", path=("quantity",)
        )


RULE = Rule(
    code="UNIT-16",
    level="error",
    scope="record",
    title="Electrical reading without its two points",
    what="A reading of a voltage or a resistance names the two points that it is taken between.",
    why=(
        "A ground-side fault is invisible from the feed to the battery post: the same meter reads another thing "
        "between other points."
    ),
    mend="Write between with the two components, the positive lead first, instead of at.",
    example=Example("readings/pump-supply-voltage.yaml", "between: [battery, pump-ground]", "at: in-tank-pump"),
    find=find,
    kinds=("readings",),
    excusable=True,
)
