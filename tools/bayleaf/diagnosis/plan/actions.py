"""What a technician can do next on a car: procedures with the readings that they give and the minutes that they cost."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from bayleaf.diagnosis.car.car import Car, present, usable
from bayleaf.diagnosis.car.conditions import holds_in
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.records import Book, Record, listed, mapped
from bayleaf.vocabulary import Acts

SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
OPENS, UNPLUGS = 2, 1  # how far an action goes into the car: a fuel joint is opened, a connector is parted


class Action(NamedTuple):
    """One procedure as a test.

    `minutes` are its own with what it follows, `setup` those of the connections that it needs, undoing included.
    `readings` maps each unread reading to the instrument that takes it, "" where none is named. `intrusion` is 0 for
    looking and measuring, UNPLUGS or OPENS. `first` marks the standing beginning: look, smell, listen, battery.
    """

    procedure: str
    readings: dict[str, str]
    minutes: float
    setup: float
    connections: tuple[str, ...]
    intrusion: int
    people: int
    signal: str
    first: bool


SHORT = 10  # hands-on minutes: a look that takes longer is a test like any other, and not the standing beginning


def actions_of(
    book: Book,
    car: Car,
    shop: frozenset[str] | None,
    prevented: frozenset[str],
    done: frozenset[str],
    standing: frozenset[str] = frozenset(),
) -> list[Action]:
    """Every procedure that this car and this shop allow and that gives a reading nobody has taken yet.

    `shop` holds the instruments and adapters there are (None: all), `prevented` the states that the complaint rules
    out, `done` the readings that were taken or cannot be, `standing` the connections that are already made.
    """
    layout, actions, repairs = layout_of(book), [], repairs_of(book)
    for id, record in book.of("procedures").items():
        serves = listed(record.data.get("systems"))
        if (
            not usable(record)
            or id in repairs
            or record.data.get("standing")
            or (serves and not set(serves) & set(car.systems))
        ):
            continue
        needs = mapped(record.data.get("needs"))
        if not all(present(layout, car, part) for part in listed(needs.get("has"))) or not _equipped(book, needs, shop):
            continue
        steps = list(steps_of(book, record))
        readings = {r: i for r, i in _readings(book, steps, shop, prevented).items() if r not in done}
        setup = _setup(book, car, shop, [s for s in listed(needs.get("states")) if _connects(book, s)], standing)
        if readings and setup is not None:
            actions.append(
                Action(
                    id,
                    readings,
                    minutes_of(book, record),
                    setup,
                    tuple(s for s in listed(needs.get("states")) if _connects(book, s)),
                    _intrusion(steps),
                    needs.get("people", 1),
                    _signal(book, steps),
                    mapped(record.data.get("minutes")).get("hands", 0) <= SHORT and _begins(book, record),
                )
            )
    return actions


def repairs_of(book: Book) -> set[str]:
    """The procedures that repair a fault: nobody renews a part to find out."""
    return {m for r in book.of("faults").values() for m in listed(r.data.get("mended_by")) if isinstance(m, str)}


def takers_of(book: Book, car: Car) -> dict[str, float]:
    """Each reading that some procedure takes on this car to the minutes of the shortest that does."""
    takers: dict[str, float] = {}
    for action in actions_of(book, car, None, frozenset(), frozenset()):
        for reading in action.readings:
            takers[reading] = min(takers.get(reading, action.minutes), action.minutes)
    return takers


def minutes_of(book: Book, record: Record, above: tuple[str, ...] = ()) -> float:
    """The minutes of a procedure with those of what it follows, hands-on and waiting together; at least one."""
    own = mapped(record.data.get("minutes"))
    total = float(own.get("hands", 0) + own.get("waiting", 0))
    for step in listed(record.data.get("steps")):
        followed = book.of("procedures").get(step.get("follow", ""))
        if followed is not None and followed.id not in (*above, record.id):
            total += minutes_of(book, followed, (*above, record.id))
    return max(1.0, total)


def steps_of(book: Book, record: Record, above: tuple[str, ...] = ()) -> Iterator[dict]:
    """The steps of a procedure with those of the procedures that it follows."""
    for step in listed(record.data.get("steps")):
        followed = book.of("procedures").get(step.get("follow", ""))
        if followed is None:
            yield step
        elif followed.id not in above:
            yield from steps_of(book, followed, (*above, record.id))


def _readings(book: Book, steps: list[dict], shop: frozenset[str] | None, prevented: frozenset[str]) -> dict[str, str]:
    """The diagnosis readings that steps take with what the shop has, each with its instrument."""
    readings: dict[str, str] = {}
    for takes in (mapped(step.get("takes")) for step in steps):
        reading = str(takes.get("reading", ""))
        record = book.of("readings").get(reading)
        if (
            record is None
            or record.data.get("purpose", "diagnosis") != "diagnosis"
            or holds_in(book, reading) & prevented
        ):
            continue
        able = _instruments(book, takes.get("instrument", ""), shop)
        if able:
            readings.setdefault(reading, able[0])
    return readings


def _instruments(book: Book, named: str, shop: frozenset[str] | None) -> list[str]:
    """The instruments of the shop that a name stands for; [""] where none is named."""
    if not named:
        return [""]
    able = [id for id, r in book.of("equipment").items() if named in (id, r.data.get("type")) and usable(r)]
    return [id for id in able if shop is None or id in shop]


def _equipped(book: Book, needs: dict, shop: frozenset[str] | None) -> bool:
    """Whether the shop has what a procedure needs; protective equipment is assumed."""
    if shop is None:
        return True
    for id in listed(needs.get("equipment")):
        record = book.of("equipment").get(id)
        if record is None or record.data.get("protective") or not _is_instrument(record):
            continue
        if not _instruments(book, id, shop):
            return False
    return True


def _is_instrument(record: Record) -> bool:
    """Whether a shop may lack it: it measures something, or is rated for a pressure as an adapter is."""
    return bool(listed(record.data.get("measures"))) or "rated" in record.data


def _connects(book: Book, state: str) -> bool:
    record = book.of("states").get(state)
    return record is not None and record.data.get("connection") is True


def _setup(
    book: Book, car: Car, shop: frozenset[str] | None, connections: list[str], standing: frozenset[str]
) -> float | None:
    """The minutes of making the connections that do not stand yet and of undoing them; None where the shop cannot."""
    layout, minutes = layout_of(book), 0.0
    for state in connections:
        if state in standing:
            continue
        makers, enders = [], []
        for record in book.of("procedures").values():
            serves, needs = listed(record.data.get("systems")), mapped(record.data.get("needs"))
            if not usable(record) or (serves and not set(serves) & set(car.systems)):
                continue
            able = all(present(layout, car, c) for c in listed(needs.get("has"))) and _equipped(book, needs, shop)
            if state in listed(record.data.get("leaves")) and able:
                makers.append(minutes_of(book, record))
            if state in listed(record.data.get("ends")):
                enders.append(minutes_of(book, record))
        if not makers:
            return None
        minutes += min(makers) + min(enders, default=0.0)
    return minutes


def _intrusion(steps: list[dict]) -> int:
    acts = {step.get("act") for step in steps}
    return OPENS if Acts.OPEN_JOINT in acts else UNPLUGS if Acts.DISCONNECT_ELECTRICAL in acts else 0


def _begins(book: Book, record: Record) -> bool:
    """Whether a procedure belongs to the standing beginning: one of its tasks comes first on any car."""
    tasks = book.of("tasks")
    return any(tasks[t].data.get("first") is True for t in listed(record.data.get("tasks")) if t in tasks)


def _signal(book: Book, steps: list[dict]) -> str:
    """The worst signal word among the cautions of these steps; "" where there is none."""
    cautions = (book.of("cautions").get(c) for step in steps for c in listed(step.get("cautions")))
    words = {caution.data.get("signal") for caution in cautions if caution}
    return next((word for word in SIGNALS if word in words), "")
