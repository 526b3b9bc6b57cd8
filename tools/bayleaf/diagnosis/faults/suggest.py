"""A first draft of what each reading shows when a part fails in a given way, for a person to correct.

The rules are those of any pipe or wire: a narrow place raises what is ahead of it and starves what is behind it, a leak
lowers both, lost volts show across the place that loses them. Nothing here is a fact about a car.
"""

from __future__ import annotations

from dataclasses import dataclass

from bayleaf.diagnosis.car.car import car_of_system, offers, places_of
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.faults.spared import Why, why_of
from bayleaf.diagnosis.faults.stages import healthy_of, is_diagnosis
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.verdict import HIGH, LOW, NONE, NORMAL
from bayleaf.quantities import Quantity
from bayleaf.records import Book, Record, listed
from bayleaf.records.record import Source
from bayleaf.vocabulary import Quantities

MECHANISMS = ("restricts", "leaks", "weakens", "opens", "shorts", "sticks", "biases")
WIRES = {"current", "signal"}
# Closed loop, load and idle control move these with almost every fault: only a person can say which way.
ONLY_A_PERSON = frozenset(
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
LOST = Quantities.VOLTAGE_DROP  # the quantity of what a wire loses; any other voltage is what arrives

# Of a pipe: what is shown ahead of the part, behind it and in its flow, and by the current of what pumps.
PIPE = {
    "restricts": ((NORMAL, HIGH), (NORMAL, LOW), (NORMAL, HIGH)),
    "leaks": ((NORMAL, LOW), (LOW,), (NORMAL, LOW)),
    "weakens": ((NORMAL,), (NORMAL, LOW), (NORMAL, LOW)),
    "opens": ((LOW,), (LOW,), (NORMAL, LOW)),
    "shorts": ((LOW,), (LOW,), (NORMAL, LOW)),
    "sticks": ((LOW, NORMAL, HIGH), (LOW, NORMAL, HIGH), (LOW, NORMAL, HIGH)),
    "biases": ((LOW, HIGH), (LOW, HIGH), (NORMAL,)),
}
# Of a wire: what is lost across the part, what is lost elsewhere, the current, and what the load still gets and does.
WIRE = {
    "restricts": ((HIGH,), (NORMAL, LOW), (NORMAL, LOW), (NORMAL, LOW)),
    "leaks": ((NORMAL,), (NORMAL,), (NORMAL, HIGH), (NORMAL, LOW)),
    "weakens": ((NORMAL, HIGH), (NORMAL, LOW), (NORMAL, LOW), (NORMAL, LOW)),
    "opens": ((HIGH,), (NORMAL, NONE), (NONE,), (NONE,)),
    "shorts": ((LOW, NONE), (NORMAL, HIGH), (HIGH, NONE), (NONE,)),
    "sticks": ((NORMAL, HIGH), (NORMAL, NONE), (NORMAL, NONE), (NORMAL, NONE)),
    "biases": ((LOW, HIGH), (NORMAL,), (LOW, HIGH), (LOW, HIGH)),
}
CURRENT = (0, 0, 0, 0, 1)  # powers of m, kg, s, K, A


@dataclass(frozen=True)
class Suggestion:
    """One reading with the answers that the mechanism suggests; none for readings that only a person can judge."""

    reading: str
    answers: tuple[str, ...]
    where: str  # in words, for a comment beside it


Path = tuple[str, str]  # (system, path name)


def near(book: Book, layout: Layout, part: str, systems: list[str]) -> dict[Path, bool]:
    """The paths through a part, and those that share a component with one of them; True for the part's own."""
    paths = {(s, p["name"]): p for s in systems for p in _paths(book, s)}
    own = [path for path in paths if path in layout.paths(part)]
    touched = {c for path in own for c in paths[path]["through"]}
    shared = [path for path in paths if path not in own and any(path in layout.paths(c) for c in touched)]
    return dict.fromkeys(own, True) | dict.fromkeys(shared, False)


def suggest(book: Book, layout: Layout, part: str, mechanism: str) -> list[Suggestion]:
    """Every reading on the part's paths and beside them, or that its variables reach, with suggested answers.

    In the book's order. What the graph leaves healthy on each system is left out.

    Raises KeyError for a mechanism that is not among MECHANISMS.
    """
    systems = list(dict.fromkeys(system for system, _name in sorted(layout.paths(part))))
    paths, desk, result = near(book, layout, part, systems), Desk(book), []
    fault = Record("faults", f"a fault of {part}", {"part": part}, Source(""))
    carries = {carried(book, path) for path, own in paths.items() if own}
    # An open or a short is a fault of the wire even in a part that fuel flows through; anything else is one of the pipe.
    electrical = bool(carries & WIRES) and (mechanism in ("opens", "shorts") or carries <= WIRES)
    for reading, record in book.of("readings").items():
        path = _path_of(book, layout, reading, paths)
        whys = {
            why_of(book, layout, (s,), fault, record)
            for s in systems
            if offers(book, layout, car_of_system(book, s), reading)
        }
        if not whys or not is_diagnosis(record) or whys == {Why.SPARED}:
            continue
        if path is None:
            if whys & {Why.REACHED, Why.LOOKED_AT}:
                result.append(Suggestion(reading, (), "reached, on no path beside the part"))
            continue
        healthy, quantity = healthy_of(book, reading), desk.quantity(reading)
        if "answers" in record.data:
            at_part = part in layout.chain(record.data.get("at", ""))
            answers = tuple(a for a in record.data["answers"] if (a not in healthy) is at_part)
        elif quantity is None or quantity.id in ONLY_A_PERSON:
            answers = ()
        else:
            through = next(p["through"] for p in _paths(book, path[0]) if p["name"] == path[1])
            ends = [_index(layout, through, c) for c in places_of(book, reading)]
            place = _index(layout, through, part)
            if electrical:
                answers = _by_wire(mechanism, quantity, carried(book, path), ends, place)
            else:
                flows = carried(book, path) in carries - WIRES
                answers = _by_pipe(mechanism, quantity, carried(book, path) in WIRES, flows, paths[path], ends, place)
        result.append(
            Suggestion(reading, answers, f"on the path {path[1]}" + ("" if paths[path] else ", beside the part's own"))
        )
    return result


def _by_wire(mechanism: str, quantity: Quantity, carries: str, ends: list[int], place: int) -> tuple[str, ...]:
    """A fault of the wire: `ends` are the reading's places along its path, in the order of the current, `place` the part's."""
    across, elsewhere, current, load = WIRE[mechanism]
    if carries not in WIRES:
        return load if carries == "fuel" else (NORMAL,)
    if quantity.dimension == CURRENT:
        return current
    if quantity.id != LOST:
        return load
    first, last = ends[0], ends[-1]
    spans = (
        first <= place <= last if first <= last else place >= first or place <= last
    )  # the circuit closes at the battery
    return across if spans else elsewhere


def _by_pipe(
    mechanism: str, quantity: Quantity, wire: bool, flows: bool, own: bool, ends: list[int], place: int
) -> tuple[str, ...]:
    """A fault of the pipe; `flows` says that the reading's path carries what flows through the part."""
    ahead, behind, current = PIPE[mechanism]
    if wire:
        return current if quantity.dimension == CURRENT else (NORMAL,)
    if not flows:
        return (NORMAL,)
    if quantity.reference == "difference":
        return ((HIGH,) if mechanism == "restricts" else behind) if own and ends == [place] else (NORMAL,)
    return ahead if own and max(ends, default=place) < place else behind


def carried(book: Book, path: Path) -> str:
    """What flows along a path."""
    return next(p["carries"] for p in _paths(book, path[0]) if p["name"] == path[1])


def _paths(book: Book, system: str) -> list[dict]:
    return listed(book.of("systems")[system].data.get("paths"))


def _path_of(book: Book, layout: Layout, reading: str, paths: dict[Path, bool]) -> Path | None:
    """The path on which a reading lies, the part's own before one beside it."""
    places = places_of(book, reading)
    on = set.intersection(*(layout.paths(c) for c in places)) if places else set()
    return next((path for path in paths if path in on), None)


def _index(layout: Layout, through: list[str], component: str) -> int:
    """Where a component stands along a path, by itself or by what it is part of; -1 when it is not on it."""
    return next((through.index(c) for c in layout.chain(component) if c in through), -1)
