"""SAFE-17: a gauge is to measure, or to be fitted to, the high side of direct injection."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import units
from bayleaf.records import Record
from bayleaf.safety.hazards import types_of
from bayleaf.safety.paths import PathFact
from bayleaf.vocabulary import Acts, Equipment


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    for step in walk.own:
        if not step.read_paths and not step.act_paths:
            continue
        taken = step.data.get("takes", {})
        names = [taken.get("instrument")] if _high(step.read_paths) and _pressure(context, taken.get("reading")) else []
        if {Acts.CONNECT, Acts.CLOSE_JOINT} & step.own and _high(step.act_paths):
            names += [
                e
                for e in step.data.get("equipment", [])
                if any(_pressure_quantity(context, q) for q in _measures(context, e))
            ]
        for name in names:
            if isinstance(name, str) and Equipment.SCAN_TOOL not in types_of(context.book, name):
                message = f"{step_name(walk, step)} brings {name} to the high side of direct injection, which only a scan tool may read"
                yield RULE.at(record, message, path=spot(record, step, "takes", "equipment"))


def _high(paths: Iterable[PathFact]) -> bool:
    """Only the high side, and not the part of both sides that a feed gauge may measure."""
    fuel = [p for p in paths if p.carries == "fuel"]
    return bool(fuel) and all(p.side == "high" for p in fuel)


def _measures(context: Context, equipment: str) -> list[str]:
    record = context.book.of("equipment").get(equipment)
    return record.data["measures"] if record and record.sound else []


def _pressure(context: Context, reading: object) -> bool:
    quantity = context.amounts.measured(reading) if isinstance(reading, str) else None
    return quantity is not None and quantity.dimension == units()["Pa"].dimension


def _pressure_quantity(context: Context, quantity: str) -> bool:
    known = context.desk.quantities.get(quantity)
    return known is not None and known.dimension == units()["Pa"].dimension


RULE = Rule(
    code="SAFE-17",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Gauge on the high side",
    what="Pressure on the high side of direct injection is read with a scan tool, from the car's own sensor. No gauge is connected to it.",
    why="No gauge, hose or adapter of a workshop holds the pressure of a high side, and a burst hose there kills.",
    mend="Read the pressure with the scan tool.",
    example=Example(
        "procedures/read-high-side.yaml",
        "takes: {reading: high-side-pressure-idle, instrument: scan-tool}",
        "takes: {reading: high-side-pressure-idle, instrument: gauge-0-100}",
    ),
    find=find,
)
