"""A first draft of what each fault shows of one reading, for a person to answer.

The guess is what the fault says of the nearest reading with the same answers: the one whose variables are the fewest
influences away, in either direction. It is a hint and never a claim.
"""

from __future__ import annotations

from typing import NamedTuple

from bayleaf.diagnosis.car.car import car_of_system, faults_of, offers, usable
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.graph import Graph, graph_of
from bayleaf.diagnosis.faults.spared import Why, disturbed, holds_in, prevented, why_of
from bayleaf.diagnosis.faults.stages import parts_of
from bayleaf.records import Book, Record, listed, mapped


class Draft(NamedTuple):
    """One stage of a fault that something reaches and that does not speak of the reading. `like` is where the guess is from."""

    fault: Record
    stage: str
    way: tuple[str, ...]  # from what is disturbed to what the reading observes
    like: str
    answers: tuple[str, ...]


def drafts(book: Book, reading: str) -> list[Draft]:
    """Every stage, like no other, that says nothing of the reading although it is reached, once, in the book's order."""
    layout, graph, record, result = layout_of(book), graph_of(book), book.of("readings")[reading], {}
    holds, steps = holds_in(book, record), _steps(graph, record)
    observed = graph.mask(listed(record.data.get("observes")))
    cars = [car for system in book.of("systems") if offers(book, layout, car := car_of_system(book, system), reading)]
    for car in cars:
        for id in faults_of(book, layout, car):
            fault = book.of("faults")[id]
            if why_of(book, layout, car.systems, fault, record) not in (Why.REACHED, Why.LOOKED_AT):
                continue
            way = graph.way(graph.mask(disturbed(book, fault)), observed, holds, car.systems)
            for stage, (said, _spared) in parts_of(book, layout, car, id, [reading]).items():
                own = "like" not in mapped(fault.data["stages"][stage])  # the others take over what that one says
                taken = holds.isdisjoint(prevented(book, fault, stage))
                if own and taken and reading not in said and (id, stage) not in result:
                    like = _nearest(book, record, said, steps)
                    answers = sorted(said[like]) if like else ()
                    result[id, stage] = Draft(fault, stage, way, like, tuple(answers))
    return [result[key] for key in sorted(result, key=lambda key: list(book.of("faults")).index(key[0]))]


def _steps(graph: Graph, reading: Record) -> dict[str, int]:
    """How many influences away each variable is from what the reading observes, whichever way they point."""
    beside: dict[str, set[str]] = {name: {i.to for i in result} for name, result in graph.influences.items()}
    for name, result in graph.influences.items():
        for influence in result:
            beside.setdefault(influence.to, set()).add(name)
    steps = {name: 0 for name in listed(reading.data.get("observes")) if name in beside}
    fresh = list(steps)
    for name in fresh:
        for other in sorted(beside[name]):
            if other not in steps:
                steps[other] = steps[name] + 1
                fresh.append(other)
    return steps


def _nearest(book: Book, reading: Record, said: dict, steps: dict[str, int]) -> str:
    """The reading of which the fault speaks, with the same answers, that is fewest influences away; "" where there is none."""
    near = []
    for other in said:
        record = book.of("readings").get(other)
        if record is not None and usable(record) and record.data.get("answers") == reading.data.get("answers"):
            far = [steps[v] for v in listed(record.data.get("observes")) if v in steps]
            same = record.data.get("when") != reading.data.get("when")
            near += [(min(far), same, other)] if far else []
    return min(near)[2] if near else ""
