"""Bands as the checks compare them: their limits in SI, and the bands of one reading inside one family of systems."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING

from bayleaf.checks.facts.amounts import Amount
from bayleaf.records import Record

if TYPE_CHECKING:
    from bayleaf.checks.context import Context


def limits(amount: Amount) -> tuple[float, float]:
    """(low, high) in SI of a amount whose unit is known; infinite on a side without a limit."""
    low, high = amount.numbers.get((*amount.path, "min")), amount.numbers.get((*amount.path, "max"))
    return (-math.inf if low is None else amount.si(low), math.inf if high is None else amount.si(high))


def shown(amount: Amount) -> str:
    """The limits as they are written: `36 to 65 psi`, `at most 0.5 V`."""
    values = [amount.record.typed(path) or repr(value) for path, value in amount.numbers.items()]
    side = "" if len(values) > 1 else "at least " if (*amount.path, "min") in amount.numbers else "at most "
    return f"{side}{' to '.join(values)} {amount.unit}"


def systems_of_car(record: Record, context: Context) -> Iterator[Record]:
    """The sound systems of a vehicle, or of a job's car."""
    data = record.data
    if record.kind == "jobs":
        vehicle = context.book.of("vehicles").get(data.get("vehicle"))
        data = data.get("car", {}) or (vehicle.data if vehicle and vehicle.sound else {})
    for id in data.get("systems", []):
        system = context.book.of("systems").get(id)
        if system and system.sound:
            yield system


def bands_by_family(context: Context) -> dict[tuple[str, str], list[Amount]]:
    """(family, reading) to every band of it: of the systems, and of the cars that have one of them."""
    found: dict[tuple[str, str], list[Amount]] = defaultdict(list)
    for reading, amounts in context.bands.items():
        for amount in amounts:
            record = amount.record
            systems = [record] if record.kind == "systems" else systems_of_car(record, context)
            for family in {s.data["family"] for s in systems}:
                found[family, reading].append(amount)
    return found


def bands_by_reading(context: Context) -> dict[str, list[Amount]]:
    """Every band whose unit is known, by reading."""
    found: dict[str, list[Amount]] = defaultdict(list)
    for kind in ("systems", "vehicles", "jobs"):
        for record in context.book.of(kind).values():
            for amount in context.amounts(record) if record.sound else ():
                if amount.role == "band" and amount.known:
                    found[amount.path[1]].append(amount)
    return found


def bands_of(context: Context, reading: str | None, systems: list[str]) -> Iterator[Amount]:
    """The bands of a reading in these systems and in the cars that have one of them; no systems: in all."""
    for amount in context.bands.get(reading, ()):
        if not systems or not context.systems_with(amount.record).isdisjoint(systems):
            yield amount
