"""Which band judges a reading in this car and this job."""

from __future__ import annotations

from typing import Any

from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.verdicts.band import Band, best
from bayleaf.diagnosis.verdicts.compute import CannotCompute, Desk, Known
from bayleaf.quantities import Quantity, QuantityError, from_si, round_inward, show_band
from bayleaf.records import Record, mapped


def band_of(
    desk: Desk, car: Car, reading: str, job: Record | None = None, known: dict[str, Known] | None = None
) -> tuple[Band | None, str]:
    """The band that rules, and in words why a better one could not be used ("" when nothing is missing).

    `known` holds the values read so far, from which an expectation is computed.
    """
    quantity = desk.quantity(reading)
    if quantity is None:
        return None, ""
    bands: list[Band] = []
    missing = ""
    for source, record, path in _places(desk, car, reading, job):
        data = record.data
        for step in path:
            data = mapped(mapped(data).get(step))
        try:
            if "expected" in data:
                bands.append(_expectation(desk, car, quantity, data, known or {}, record.id))
            elif data:
                bands.append(_limits(quantity, data, source, record, path))
        except CannotCompute as why:
            missing = str(why)
        except (KeyError, QuantityError):
            continue  # a band in a wrong unit is the checks' to report
    chosen = best(bands)
    return chosen, missing if chosen is None or chosen.source in ("limit", "spread") else ""


def _places(desk: Desk, car: Car, reading: str, job: Record | None) -> list[tuple[str, Record, tuple[str, ...]]]:
    book = desk.book
    places: list[tuple[str, Record, tuple[str, ...]]] = [("typed", job, ("maker_bands", reading))] if job else []
    if car.vehicle:
        places.append(("vehicle", book.of("vehicles")[car.vehicle], ("bands", reading)))
    return places + [("", book.of("systems")[s], ("bands", reading)) for s in car.systems if s in book.of("systems")]


def _limits(quantity: Quantity, data: dict[str, Any], source: str, record: Record, path: tuple[str, ...]) -> Band:
    low, high = (quantity.si(data[side], data["unit"]) if side in data else None for side in ("min", "max"))
    written = (record.typed((*path, "min")) or "", record.typed((*path, "max")) or "")
    spread = data.get("means") == "spread"
    return Band(
        low,
        high,
        source or ("spread" if spread else "limit"),
        show_band(data.get("min"), data.get("max"), quantity.symbol(data["unit"]), quantity, written=written),
        spread,
        system=record.id if record.kind == "systems" else "",
        notes=data.get("looked_up", ""),
    )


def _expectation(
    desk: Desk, car: Car, quantity: Quantity, data: dict[str, Any], known: dict[str, Known], system: str
) -> Band:
    expected = data["expected"]
    middle = desk.calculate(known, car, expected["calculator"], expected["inputs"], expected.get("result"))
    half = quantity.width(data["within"]["value"], data["within"]["unit"])
    low, high = middle.value - half, middle.value + half
    unit, readings = quantity.shown[0], desk.book.of("readings")
    fed = [feed["reading"] for feed in mapped(expected["inputs"]).values() if "reading" in mapped(feed)]
    at_least, at_most = round_inward(from_si(low, unit, quantity.reference), from_si(high, unit, quantity.reference), 3)
    return Band(
        low,
        high,
        "expected",
        show_band(float(at_least), float(at_most), unit, quantity),
        data.get("means") == "spread",
        middle.allowance or 0.0,
        system,
        notes=" and ".join(readings[r].title for r in fed if r in readings)
        or desk.book.of("calculators")[expected["calculator"]].title,
    )
