"""Bands as the checks compare them: their limits in SI, and the bands of one reading inside one family of systems."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING

from bayleaf.checks.facts.sites import Site
from bayleaf.records import Record, listed, mapped

if TYPE_CHECKING:
    from bayleaf.checks.context import Context


def limits(site: Site) -> tuple[float, float]:
    """(low, high) in SI of a site whose unit is known; infinite on a side without a limit."""
    low, high = site.numbers.get((*site.path, "min")), site.numbers.get((*site.path, "max"))
    return (-math.inf if low is None else site.si(low), math.inf if high is None else site.si(high))


def shown(site: Site) -> str:
    """The limits as they are written: `36 to 65 psi`, `at most 0.5 V`."""
    values = [site.record.typed(path) or repr(value) for path, value in site.numbers.items()]
    side = "" if len(values) > 1 else "at least " if (*site.path, "min") in site.numbers else "at most "
    return f"{side}{' to '.join(values)} {site.unit}"


def systems_of_car(record: Record, context: Context) -> Iterator[Record]:
    """The sound systems of a vehicle, or of a job's car."""
    data = record.data
    if record.kind == "jobs":
        vehicle = context.book.of("vehicles").get(data.get("vehicle"))
        data = mapped(data.get("car")) or (vehicle.data if vehicle and vehicle.sound else {})
    for id in listed(data.get("systems")):
        system = context.book.of("systems").get(id)
        if system and system.sound:
            yield system


def bands_by_family(context: Context) -> dict[tuple[str, str], list[Site]]:
    """(family, reading) to every band of it: of the systems, and of the cars that have one of them."""
    found: dict[tuple[str, str], list[Site]] = defaultdict(list)
    for reading, sites in context.bands.items():
        for site in sites:
            record = site.record
            systems = [record] if record.kind == "systems" else systems_of_car(record, context)
            for family in {s.data["family"] for s in systems}:
                found[family, reading].append(site)
    return found


def bands_by_reading(context: Context) -> dict[str, list[Site]]:
    """Every band whose unit is known, by reading."""
    found: dict[str, list[Site]] = defaultdict(list)
    for kind in ("systems", "vehicles", "jobs"):
        for record in context.book.of(kind).values():
            for site in context.sites(record) if record.sound else ():
                if site.role == "band" and site.known:
                    found[site.path[1]].append(site)
    return found


def bands_of(context: Context, reading: str | None, systems: list[str]) -> Iterator[Site]:
    """The bands of a reading in these systems and in the cars that have one of them; no systems: in all."""
    for site in context.bands.get(reading, ()):
        if not systems or not context.systems_with(site.record).isdisjoint(systems):
            yield site
