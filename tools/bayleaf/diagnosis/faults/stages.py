"""What each stage of a fault says about each reading, in one car: `like`, `differs` and `elsewhere` worked out."""

from __future__ import annotations

from collections.abc import Set
from functools import cache

from bayleaf.diagnosis.car.car import Car, inputs_of, places_of
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.verdicts.verdict import NORMAL
from bayleaf.records import Book, listed, mapped
from bayleaf.vocabulary import Quantities

# Closed loop, load and idle control move these with almost every fault: `elsewhere` never makes them normal.
NEVER_ELSEWHERE = frozenset(
    {
        Quantities.FUEL_TRIM,
        Quantities.ENGINE_SPEED,
        Quantities.LAMBDA,
        Quantities.AIR_FUEL_RATIO,
        Quantities.OXYGEN_SENSOR_VOLTAGE,
        Quantities.OXYGEN_PUMP_CURRENT,
        Quantities.CARBON_MONOXIDE,
        Quantities.CARBON_DIOXIDE,
        Quantities.OXYGEN,
        Quantities.HYDROCARBONS,
        Quantities.NITRIC_OXIDE,
    }
)
# What is worked out from those, or from boost, moves with every fault that takes power: the filling of the cylinders, the work of a converter.
NEVER_FED_BY = NEVER_ELSEWHERE | {Quantities.BOOST_PRESSURE}

Answers = dict[str, frozenset[str]]  # reading → every answer it may give; a reading left out may give any


def normal_of(book: Book, reading: str) -> str:
    """The answer of a healthy car: *normal*, or what the question says is normal; *normal* too for a reading that is not there."""
    record = book.of("readings").get(reading)
    return record.data.get("normal", NORMAL) if record else NORMAL


def stages_of(book: Book, layout: Layout, car: Car, fault: str, own: list[str]) -> dict[str, Answers]:
    """Each stage's answers in this car. `own` are the car's systems in which the fault occurs (see systems_of)."""
    said = said_of(book, layout, car, fault)
    silent = elsewhere(book, layout, car, mapped(book.of("faults")[fault].data.get("elsewhere")), own)
    return {stage: silent | answers for stage, answers in said.items()} if silent else said


def said_of(book: Book, layout: Layout, car: Car, fault: str) -> dict[str, Answers]:
    """The same without `elsewhere`; cars for which a fault does not differ share the answer, which nobody changes."""
    data = book.of("faults")[fault].data
    differs = mapped(data.get("differs"))
    key = ("stages", fault, *(system for system in differs if system in car.systems))
    said = layout.kept.get(key)
    if said is None:
        raw = mapped(data.get("stages"))
        said = layout.kept[key] = {
            stage: _resolved(raw, [mapped(differs[system]) for system in key[2:]], stage, ()) for stage in raw
        }
    return said


def _resolved(raw: dict, differs: list[dict], stage: str, seen: tuple[str, ...]) -> Answers:
    """A stage on top of the one it is like; then what differs in this car, for all stages and for this one."""
    if stage in seen or stage not in raw:
        return {}
    said = {
        reading: _only(answer) if answer.__class__ is str else _set(answer)
        for reading, answer in mapped(raw[stage]).items()
        if reading != "like"
    }
    base = mapped(raw[stage]).get("like")
    found = _resolved(raw, differs, base, (*seen, stage)) if isinstance(base, str) else {}
    found.update(said)
    for layer in [mapped(d.get("all")) for d in differs] + [mapped(d.get(stage)) for d in differs]:
        found.update({reading: _set(answer) for reading, answer in layer.items()})
    return found


def _set(answer: object) -> frozenset[str]:
    return frozenset(answer) if isinstance(answer, list) else _only(str(answer))


@cache
def _only(answer: str) -> frozenset[str]:
    return frozenset({answer})


def elsewhere(book: Book, layout: Layout, car: Car, claim: dict, own: list[str]) -> Answers:
    """The readings that a fault's `elsewhere` makes normal: those that lie on the paths it names.

    A path name is looked up in the fault's own systems first, then in the other systems of the car. What is worked out
    from trims, gases, engine speed or boost is never made normal.
    """
    names = set(listed(claim.get("normal_on")))
    if not names:
        return {}
    paths: set[tuple[str, str]] = set()
    for name in names:
        found = [(s, name) for s in car.systems if name in layout.names[s]]
        paths |= {p for p in found if p[0] in own} or set(found)
    key = ("elsewhere", frozenset(paths))
    if key not in layout.kept:
        readings = book.of("readings")
        layout.kept[key] = {
            reading: _only(normal_of(book, reading))
            for reading in layout.readings.among((system for system, _path in paths), anywhere=False)
            if readings[reading].data.get("purpose", "diagnosis") == "diagnosis"
            and lies_on(book, layout, reading, paths)
            and not moves(book, reading)
        }
    return layout.kept[key]


def lies_on(book: Book, layout: Layout, reading: str, paths: Set[tuple[str, str]]) -> bool:
    """Whether a reading is taken on one of these paths: its place, or both ends of `between` on one path.

    A computed reading without a place lies where all its inputs lie. Trims, gases and engine speed lie on none.
    """
    places = places_on(book, layout, reading)
    return bool(places) and not any(paths.isdisjoint(place) for place in places)


def moves(book: Book, reading: str, seen: tuple[str, ...] = ()) -> bool:
    """Whether a reading is worked out, directly or through others, from one that moves with almost every fault."""
    record = book.of("readings").get(reading)
    if record is None or reading in seen:
        return False
    fed = inputs_of(book, reading)
    return (bool(seen) and record.data.get("quantity") in NEVER_FED_BY) or any(
        moves(book, r, (*seen, reading)) for r in fed
    )


def places_on(book: Book, layout: Layout, reading: str) -> list[set[tuple[str, str]]]:
    """The paths of each place that a reading is taken at; a path must be among those of every place. [] where it lies on none."""
    key = ("lies on", reading)
    if key not in layout.kept:
        layout.kept[key] = _lies(book, layout, reading, ())
    return layout.kept[key]


def _lies(book: Book, layout: Layout, reading: str, seen: tuple[str, ...]) -> list[set[tuple[str, str]]]:
    if book.of("readings")[reading].data.get("quantity") in NEVER_ELSEWHERE or reading in seen:
        return []
    places = places_of(book, reading)
    if places:
        return [set.intersection(*(layout.paths(c) for c in places))]
    inputs = [_lies(book, layout, r, (*seen, reading)) for r in inputs_of(book, reading) if r in book.of("readings")]
    return [place for places in inputs for place in places] if all(inputs) else []
