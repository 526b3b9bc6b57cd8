"""What each stage of a fault says about each reading, in one car: `like`, `differs`, effects and the graph worked out."""

from __future__ import annotations

from functools import cache

from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.faults.spared import holds_in, prevented, spared_among
from bayleaf.diagnosis.verdicts.verdict import NORMAL
from bayleaf.records import Book, Record, listed, mapped

Answers = dict[str, frozenset[str]]  # reading → every answer it may give; a reading left out may give any
STAGE_FIELDS = ("like", "effect", "felt")  # what a stage says besides its readings


def healthy_of(book: Book, reading: str, systems: tuple[str, ...] = ()) -> frozenset[str]:
    """Every answer that a healthy car may give, one with these systems: *normal* alone where nothing else is said."""
    record = book.of("readings").get(reading)
    own = listed(record.data.get("healthy")) if record else []
    here = [mapped(book.of("systems")[s].data.get("healthy")).get(reading) for s in systems if s in book.of("systems")]
    return frozenset(own or [NORMAL]).union(*(listed(answers) for answers in here))


def parts_of(
    book: Book, layout: Layout, car: Car, fault: str, readings: list[str]
) -> dict[str, tuple[Answers, Answers]]:
    """For each stage (what the fault says, by itself or as another reading, what the graph alone says).

    Of `readings`, those for diagnosis are asked of the graph. What cannot be taken in a stage is left out: it may be anything.
    """
    record, healthy = book.of("faults")[fault], spared_of(book, layout, car, fault, readings)
    borrowed = [r for r in _borrowing(book, layout, tuple(readings)) if r not in healthy]
    result = {}
    for stage, (said, by_effect) in _stages(book, layout, car, fault).items():
        own = {r: a for r, a in said.items() if r not in healthy or r not in by_effect}
        own = {**_borrowed(book, said, borrowed), **own} if borrowed else own
        spared = {r: answers for r, answers in healthy.items() if r not in own}
        gone = prevented(book, record, stage)
        if gone:
            own, spared = (
                {r: a for r, a in x.items() if gone.isdisjoint(_holds(book, layout, r))} for x in (own, spared)
            )
        result[stage] = own, spared
    return result


def _borrowing(book: Book, layout: Layout, readings: tuple[str, ...]) -> list[str]:
    """Those of the readings of a car that answer as another one."""
    key = ("borrowing", readings)
    if key not in layout.kept:
        layout.kept[key] = [r for r in readings if "answers_as" in book.of("readings")[r].data]
    return layout.kept[key]


def _holds(book: Book, layout: Layout, reading: str) -> frozenset[str]:
    key = ("holds", reading)
    if key not in layout.kept:
        record = book.of("readings").get(reading)
        layout.kept[key] = holds_in(book, record) if record else frozenset()
    return layout.kept[key]


def _borrowed(book: Book, said: Answers, readings: list[str]) -> Answers:
    """What readings that answer as another one show, where the fault speaks of the other and not of them."""
    result = {}
    for reading in readings:
        seen, at = {reading}, book.of("readings")[reading].data["answers_as"]
        while at in book.of("readings") and at not in said and at not in seen:
            seen.add(at)
            at = book.of("readings")[at].data.get("answers_as", "")
        if at in said:
            result[reading] = said[at]
    return result


def spared_of(book: Book, layout: Layout, car: Car, fault: str, readings: list[str]) -> Answers:
    """The readings that are healthy on this car with this fault by the graph, whatever the stage."""
    key = ("for diagnosis", tuple(readings))
    if key not in layout.kept:
        layout.kept[key] = tuple(r for r in readings if is_diagnosis(book.of("readings")[r]))
    asked = layout.kept[key]
    spared = spared_among(book, layout, car.systems, book.of("faults")[fault], asked)
    kept = ("healthy", car.systems, asked)
    if kept not in layout.kept:  # the same for all faults of a car
        layout.kept[kept] = {reading: healthy_of(book, reading, car.systems) for reading in asked}
    return {reading: answers for reading, answers in layout.kept[kept].items() if reading in spared}


def is_diagnosis(reading: Record) -> bool:
    """Whether a reading is taken for diagnosis."""
    return reading.data.get("purpose", "diagnosis") == "diagnosis"


def own_of(book: Book, layout: Layout, car: Car, fault: str) -> dict[str, Answers]:
    """What the fault says of itself, without its effects."""
    stages = _stages(book, layout, car, fault).items()
    return {stage: {r: a for r, a in answers.items() if r not in by_effect} for stage, (answers, by_effect) in stages}


def _stages(book: Book, layout: Layout, car: Car, fault: str) -> dict[str, tuple[Answers, frozenset[str]]]:
    """Cars for which a fault does not differ share the answer, which nobody changes."""
    data = book.of("faults")[fault].data
    differs = mapped(data.get("differs"))
    key = ("stages", fault, *(system for system in differs if system in car.systems))
    if key not in layout.kept:
        raw = mapped(data.get("stages"))
        layers = [mapped(differs[system]) for system in key[2:]]
        layout.kept[key] = {stage: _resolved(book, raw, layers, stage, ()) for stage in raw}
    return layout.kept[key]


def _resolved(
    book: Book, raw: dict, differs: list[dict], stage: str, seen: tuple[str, ...]
) -> tuple[Answers, frozenset[str]]:
    """A stage on top of its effects and of the one it is like; then what differs in this car, for all stages and for this one.

    With it the readings of which only an effect speaks.
    """
    if stage in seen or stage not in raw:
        return {}, frozenset()
    own = mapped(raw[stage])
    result, shared = {}, set()
    if isinstance(own.get("like"), str):
        base, by_effect = _resolved(book, raw, differs, own["like"], (*seen, stage))
        result, shared = dict(base), set(by_effect)
    for effect in listed(own.get("effect")):
        record = book.of("effects").get(effect)
        answers = _said(mapped(record.data.get("shows"))) if record else {}
        result.update(answers)
        shared.update(answers)
    for layer in [own, *(mapped(d.get("all")) for d in differs), *(mapped(d.get(stage)) for d in differs)]:
        answers = _said(layer)
        result.update(answers)
        shared.difference_update(answers)
    return result, frozenset(shared)


def _said(answers: dict) -> Answers:
    return {r: _set(answer) for r, answer in answers.items() if r not in STAGE_FIELDS}


def _set(answer: object) -> frozenset[str]:
    return frozenset(answer) if isinstance(answer, list) else _only(str(answer))


@cache
def _only(answer: str) -> frozenset[str]:
    return frozenset({answer})
