"""SHAPE-15: reading without its place."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Quantities

_ANYWHERE = {
    Quantities.BAROMETRIC_PRESSURE,
    Quantities.ALTITUDE,
    Quantities.RELATIVE_HUMIDITY,
    Quantities.VEHICLE_SPEED,
    Quantities.DISTANCE,
    Quantities.ENGINE_LOAD,
    Quantities.AIR_TEMPERATURE,
}


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Questions and measured readings for diagnosis or recognition; both fields together are one too many."""
    data = record.data
    if "at" in data and "between" in data:
        yield RULE.at(record, "at and between stand together", "Keep one of the two.", ("at",), True)
    exempt = data.get("purpose") == "computation" or "computed" in data or data.get("quantity") in _ANYWHERE
    if not exempt and "at" not in data and "between" not in data:
        yield RULE.at(record, "it is taken at no component", path=("when",), key=True)


RULE = Rule(
    code="SHAPE-15",
    level="error",
    scope="record",
    title="Reading without its place",
    what=(
        "A reading says at which component it is taken, or between which two; only the weather, the car as a "
        "whole and computed values have none."
    ),
    why="A reading without a place lies on no path, so no fault has to speak about it.",
    mend="Write at, or between for an electrical reading.",
    example=Example("readings/lines-at-rail.yaml", "at: fuel-rail\n", ""),
    find=find,
    kinds=("readings",),
    excusable=True,
)
