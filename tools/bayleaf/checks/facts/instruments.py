"""Instruments as steps name them: by one of their own, or by a type that several belong to."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from bayleaf.diagnosis.verdicts.instrument import Instrument, types_of
from bayleaf.quantities import to_si
from bayleaf.records import Record
from bayleaf.safety.paths import pascals

if TYPE_CHECKING:
    from bayleaf.checks.context import Context


def instruments(context: Context, named: str | None, reading: str | None) -> list[Instrument]:
    """Those that a name stands for and that state a range for this reading: itself, or the ones of that type."""
    quantity = context.numbers.measured(reading) if reading else None
    if quantity is None or named not in context.book.of("equipment"):
        return []
    found = (context.instrument(id, quantity) for id in context.of_type.get(named, ()))
    return [one for one in found if one and one.low is not None and one.high is not None]


def by_type(context: Context) -> dict[str, list[str]]:
    """Every equipment id to the ids that it stands for: itself and all that name it as their type."""
    found: dict[str, list[str]] = {}
    for id, record in context.book.of("equipment").items():
        for above in types_of(context.book, id) if record.sound else ():
            found.setdefault(above, []).append(id)
    return found


def too_short(context: Context, record: Record, takes: dict) -> Iterator[tuple[Instrument, str]]:
    """(instrument, greatest pressure as written) where the scale ends at or under what the measured fuel path can hold."""
    reading = context.book.of("readings").get(takes.get("reading"))
    quantity = context.numbers.measured(takes.get("reading", ""))
    if reading is None or quantity is None or quantity.reference != "gauge":
        return
    on = context.layout.paths(reading.data.get("at", ""))
    systems = record.data["systems"]
    greatest = [
        p["greatest"]
        for id, system in context.book.of("systems").items()
        if system.sound and (not systems or id in systems)
        for p in system.data["paths"]
        if "greatest" in p and p["carries"] == "fuel" and (id, p["name"]) in on
    ]
    most = max(greatest, key=lambda g: pascals(g) or 0.0, default=None)
    if most is None:
        return
    for one in context.instruments(takes.get("instrument"), reading.id):
        if one.high <= (pascals(most) or to_si(0, "Pa", "gauge")):
            yield one, f"{most['value']:g} {most['unit']}, the greatest credible pressure there"
