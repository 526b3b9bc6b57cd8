"""SAFE-45: the quantity at which to stop is more than the container holds."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import to_si, units
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    if not context.procedures.steps_with(record, "stop_at"):
        return
    litre = units()["L"].dimension
    equipment = context.book.of("equipment")
    held = {}
    for id in record.data["needs"]["equipment"]:
        reach = equipment[id].data.get("range", {}) if id in equipment and equipment[id].sound else {}
        if reach and reach["unit"] in units() and units()[reach["unit"]].dimension == litre:
            held[id] = (to_si(reach["max"], reach["unit"], "none"), f"{reach['max']:g} {reach['unit']}")
    for i, step in context.procedures.steps_with(record, "stop_at"):
        stop = step["stop_at"]
        if not held or stop["unit"] not in units() or units()[stop["unit"]].dimension != litre:
            continue
        largest = max(held, key=lambda id: held[id][0])
        if to_si(stop["value"], stop["unit"], "none") >= held[largest][0]:
            message = f"step {i + 1} stops at {stop['value']:g} {stop['unit']}, and {largest} holds {held[largest][1]}"
            yield RULE.at(record, message, path=("steps", i, "stop_at", "value"))


RULE = Rule(
    code="SAFE-45",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Container smaller than the quantity",
    what="The quantity at which a step stops is less than what the container of the procedure holds.",
    why="The mark is never seen, and the rest runs over the floor.",
    mend="Lower the quantity, or name a larger container.",
    example=Example(
        "procedures/relieve-fuel-pressure.yaml", "stop_at: {value: 0.5, unit: L,", "stop_at: {value: 5, unit: L,"
    ),
    find=find,
)
