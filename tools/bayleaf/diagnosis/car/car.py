"""A car as diagnosis sees it: its systems, what it has, which readings it offers and which faults it can suffer from."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from bayleaf.diagnosis.car.layout import Layout, Wants
from bayleaf.records import Book, Record, listed, mapped


class Car(NamedTuple):
    """`has` is None when every optional feature is there, as when a system is looked at on its own."""

    title: str
    systems: tuple[str, ...]
    has: frozenset[str] | None = None
    fuel: str = ""
    altitude: dict[str, Any] | None = None  # {value, unit}
    bands: Mapping[str, Any] = MappingProxyType({})  # the maker's, as written in the vehicle
    vehicle: str = ""


def car_of_system(book: Book, system: str) -> Car:
    """A car with this one system and every feature that such a system may have."""
    return Car(book.of("systems")[system].title, (system,))


def car_of_vehicle(book: Book, vehicle: str) -> Car:
    """The car of a vehicle record."""
    record = book.of("vehicles")[vehicle]
    return _car(book, record.title, record.data, vehicle)


def car_of_job(book: Book, data: dict[str, Any]) -> Car:
    """The car of a job: its vehicle, or what the job says about a car that is in no record."""
    if data.get("vehicle") in book.of("vehicles"):
        return car_of_vehicle(book, data["vehicle"])
    return _car(book, "As described in the job", mapped(data.get("car")), "")


def _car(book: Book, title: str, data: dict[str, Any], vehicle: str) -> Car:
    return Car(
        title=title,
        systems=tuple(s for s in listed(data.get("systems")) if s in book.of("systems")),
        has=frozenset(listed(data.get("has"))),
        fuel=data.get("fuel", ""),
        altitude=data.get("altitude") if isinstance(data.get("altitude"), dict) else None,
        bands=mapped(data.get("bands")),
        vehicle=vehicle,
    )


def places_of(book: Book, reading: str) -> list[str]:
    """The components that say on which path a reading lies: both ends of `between`, else `at`; [] when it names none.

    An electrical reading is taken between two points; the part where one stands may lie on other paths besides.
    """
    data = book.of("readings")[reading].data
    return listed(data.get("between")) or ([data["at"]] if isinstance(data.get("at"), str) else [])


def inputs_of(book: Book, reading: str) -> list[str]:
    """The readings that a computed reading is computed from; [] for any other."""
    computed = mapped(book.of("readings")[reading].data.get("computed"))
    if "difference" in computed:
        return [r for r in mapped(computed["difference"]).values() if isinstance(r, str)]
    return [v["reading"] for v in mapped(computed.get("inputs")).values() if isinstance(v, dict) and "reading" in v]


def present(layout: Layout, car: Car, component: str) -> bool:
    """Whether the car has this component: an optional feature only when the car says so."""
    if car.has is None:
        return True
    optional = set().union(*(layout.optional.get(s, set()) for s in car.systems))
    return all(c in car.has for c in layout.chain(component) if c in optional)


def within(layout: Layout, car: Car, component: str) -> bool:
    """Whether the component is in this car: on a path of its systems, or on no path of any system, as a part that every car has."""
    paths = layout.paths(component)
    return present(layout, car, component) and (not paths or any(system in car.systems for system, _path in paths))


def readings_of(book: Book, layout: Layout, car: Car) -> list[str]:
    """The readings that exist in this car, in the book's order."""
    return [reading for reading in layout.readings.among(car.systems) if offers(book, layout, car, reading)]


def usable(record: Record | None) -> bool:
    """Whether diagnosis may use a record: its shape is sound and it has not been retired."""
    return record is not None and record.sound and record.data.get("status") != "retired"


def offers(book: Book, layout: Layout, car: Car, reading: str, _seen: tuple[str, ...] = ()) -> bool:
    """Whether this reading exists in this car. A computed one needs its inputs too, and two points one path that joins them."""
    if reading in _seen:
        return False
    if reading not in layout.wants:
        layout.wants[reading] = _wants(book, layout, reading)
    joined, places, inputs = layout.wants[reading]
    if joined is not None and joined.isdisjoint(car.systems):
        return False
    return all(within(layout, car, c) for c in places) and all(
        offers(book, layout, car, r, (*_seen, reading)) for r in inputs
    )


def _wants(book: Book, layout: Layout, reading: str) -> Wants:
    record = book.of("readings").get(reading)
    if record is None or not usable(record):
        return Wants(frozenset(), [], [])
    between, at = listed(record.data.get("between")), record.data.get("at")
    ends = [paths for c in between if (paths := layout.paths(c))]
    joined = frozenset(system for system, _path in set.intersection(*ends)) if ends else None
    return Wants(joined, [*between, *([at] if isinstance(at, str) else [])], inputs_of(book, reading))


def faults_of(book: Book, layout: Layout, car: Car) -> list[str]:
    """The faults that this car can have, in the book's order."""
    return [
        f
        for f in layout.faults.among(car.systems)
        if usable(book.of("faults").get(f)) and systems_of(book, layout, car, f)
    ]


def systems_of(book: Book, layout: Layout, car: Car, fault: str) -> list[str]:
    """The car's systems in which this fault can occur: those the fault names, else those with a path through its part."""
    data = book.of("faults")[fault].data
    part = data.get("part", "")
    if part and not present(layout, car, part):
        return []
    named = listed(data.get("systems")) or [system for system, _path in layout.paths(part)]
    return [system for system in car.systems if system in named]
