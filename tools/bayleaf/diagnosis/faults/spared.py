"""Which readings a fault leaves as on a healthy car: those that look at nothing that it disturbs, by the graph.

It is a claim of the book and not a proof. A missing influence clears unsoundly, so whoever is told that a fault is
cleared is told when it was the graph that said so.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from bayleaf.diagnosis.car.conditions import holds_in as implied_in
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.faults.graph import Where, graph_of
from bayleaf.records import Book, Record, listed, mapped


class Why(StrEnum):
    """Why the graph says that a reading is healthy, or why it does not."""

    SPARED = "spared"  # nothing that the fault disturbs reaches it
    REACHED = "reached"
    LOOKED_AT = "looked at"  # it looks at a part that the fault is in or damages
    PREVENTED = "prevented"  # it cannot be taken on a car with this fault
    HELD_BACK = "held back"  # it is taken where a car with this fault does not do what a sound one does
    UNSAID = "unsaid"  # the fault disturbs nothing that has a name, or the reading looks at nothing that has one


def disturbed(book: Book, fault: Record) -> list[str]:
    """The variables that a fault disturbs: its own list, else those of its part; and those of the parts that it damages."""
    own = listed(fault.data.get("disturbs")) or _carried(book, fault.data.get("part"))
    return list(dict.fromkeys([*own, *(v for part in listed(fault.data.get("damages")) for v in _carried(book, part))]))


def _carried(book: Book, part: object) -> list[str]:
    record = book.of("components").get(part) if isinstance(part, str) else None
    return listed(record.data.get("variables")) if record else []


def holds_in(book: Book, reading: Record) -> frozenset[str]:
    """What holds while a reading is taken: its condition, what that implies, and what must be so for it to count."""
    return implied_in(book, reading.id) | {reading.data.get("when", ""), *listed(reading.data.get("valid_if"))}


def why_of(book: Book, layout: Layout, systems: tuple[str, ...], fault: Record, reading: Record) -> Why:
    """What the graph says of a reading on a car with these systems and this fault."""
    start, touched, held = _start(book, layout, fault)
    seen, parts, holds = _seen(book, layout, reading)
    if not start or not (seen or parts):
        return Why.UNSAID
    if not touched.isdisjoint(parts):
        return Why.LOOKED_AT
    if graph_of(book).reach(start, holds, systems) & seen:
        return Why.REACHED
    if not holds.isdisjoint(prevented(book, fault)):
        return Why.PREVENTED
    return Why.HELD_BACK if reading.data.get("when") in held else Why.SPARED


class _Asked(NamedTuple):
    """One reading as the graph is asked of it: what it observes, the parts that it looks at, what holds, its condition."""

    reading: str
    seen: int
    parts: frozenset[str]
    holds: frozenset[str]
    when: str


def spared_among(
    book: Book, layout: Layout, systems: tuple[str, ...], fault: Record, readings: tuple[str, ...]
) -> set[str]:
    """Those of these readings that `why_of` calls spared; what is worked out for a car serves all its faults."""
    start, touched, held = _start(book, layout, fault)
    if not start:
        return set()
    graph, gone, spared = graph_of(book), prevented(book, fault), set()
    for where, group in _by_condition(book, layout, systems, readings).items():
        reached = graph.reach_at(start, where)
        spared |= {
            asked.reading
            for asked in group
            if not reached & asked.seen
            and touched.isdisjoint(asked.parts)
            and gone.isdisjoint(asked.holds)
            and asked.when not in held
        }
    return spared


def _by_condition(
    book: Book, layout: Layout, systems: tuple[str, ...], readings: tuple[str, ...]
) -> dict[Where, list[_Asked]]:
    """The readings that observe something, by what limits the influences that reach them on this car."""
    key = ("asked", systems, readings)
    if key not in layout.kept:
        groups: dict[Where, list[_Asked]] = {}
        for id in readings:
            record = book.of("readings")[id]
            seen, parts, holds = _seen(book, layout, record)
            if seen or parts:
                where = graph_of(book).where(holds, systems)
                groups.setdefault(where, []).append(_Asked(id, seen, parts, holds, record.data.get("when", "")))
        layout.kept[key] = groups
    return layout.kept[key]


def _start(book: Book, layout: Layout, fault: Record) -> tuple[int, frozenset[str], frozenset[str]]:
    """(the mask of what it disturbs, the parts that it is in or damages with all they are part of, where it holds back)."""
    key = ("start", fault.id)
    if key not in layout.kept:
        parts = [p for p in (fault.data.get("part"), *listed(fault.data.get("damages"))) if isinstance(p, str)]
        felt = [book.of("symptoms").get(s) for s in mapped(fault.data.get("felt_as"))]
        layout.kept[key] = (
            graph_of(book).mask(disturbed(book, fault)),
            frozenset(parts),
            frozenset(c for symptom in felt if symptom for c in listed(symptom.data.get("holds_back"))),
        )
    return layout.kept[key]


def _seen(book: Book, layout: Layout, reading: Record) -> tuple[int, frozenset[str], frozenset[str]]:
    """(the mask of the variables that it observes, the parts that it looks at and what they are part of or hold, what holds)."""
    key = ("seen", reading.id)
    if key not in layout.kept:
        observed = listed(reading.data.get("observes"))
        looked = {name for name in observed if name in book.of("components")}
        inside = (c for c in book.of("components") if not looked.isdisjoint(layout.chain(c)))
        parts = frozenset(inside).union(*(layout.chain(c) for c in looked))
        layout.kept[key] = graph_of(book).mask(observed), parts, holds_in(book, reading)
    return layout.kept[key]


def prevented(book: Book, fault: Record, stage: str = "") -> frozenset[str]:
    """The states that a fault, or a stage of it, prevents: those of the symptoms as which it is always felt."""
    felt = felt_in(fault, stage)
    symptoms = [book.of("symptoms").get(s) for s, how in felt.items() if how == "always"]
    return frozenset(state for symptom in symptoms if symptom for state in listed(symptom.data.get("prevents")))


def felt_in(fault: Record, stage: str = "") -> dict[str, str]:
    """How a stage is felt: as it says itself, as the stage that it is like, or as its fault. Without a stage, the fault."""
    stages, seen = mapped(fault.data.get("stages")), set()
    while isinstance(stages.get(stage), dict) and stage not in seen:
        seen.add(stage)
        if "felt" in stages[stage]:
            return mapped(stages[stage]["felt"])
        stage = stages[stage].get("like", "")
    return mapped(fault.data.get("felt_as"))
