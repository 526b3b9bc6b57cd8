"""The readings of a job as evidence: for belief, and as masks of the rows that each of them fits."""

from __future__ import annotations

from dataclasses import replace

from bayleaf.diagnosis.belief.belief import Seen, answers_among
from bayleaf.diagnosis.car.car import inputs_of
from bayleaf.diagnosis.car.conditions import holds_in, prevented_by
from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.records import Book, mapped

Evidence = dict[str, frozenset[str]]  # reading → every answer it may have been, first taken first

STOPPED = "The car does not run now, so this was read before it stopped, and clears nothing: say when it was read."


def placed(book: Book, felt: tuple[str, ...], healthy: dict[str, frozenset[str]], taken: Taken) -> Taken:
    """A reading that the complaint itself prevents: taken while the car was well, it clears nothing.

    Where it is out of band all the same, it still speaks for what makes it so.
    """
    prevented = prevented_by(book, felt)
    if taken.aside or taken.reading not in book.of("readings") or not holds_in(book, taken.reading) & prevented:
        return taken
    return well(taken, healthy, STOPPED)


def well(taken: Taken, healthy: dict[str, frozenset[str]], why: str) -> Taken:
    """A reading taken while the fault was absent: it speaks only where it is out of band, and then only for a fault."""
    answers = taken.verdict.answers
    if answers is None or answers & healthy.get(taken.reading, frozenset()):
        return replace(taken, aside=why)
    return replace(taken, convicts=True)


def evidence_of(matrix: Matrix, taken: list[Taken]) -> Evidence:
    """What the readings that clear say. Of a reading taken for each cylinder, bank or connection, those that are out rule."""
    several: dict[str, list[frozenset[str]]] = {}
    for t in sorted((t for t in taken if t.clears and t.reading in matrix.healthy), key=lambda t: t.places[-1]):
        several.setdefault(t.reading, []).append(t.answers)
    return {reading: frozenset().union(*_ruling(matrix, reading, answers)) for reading, answers in several.items()}


def _ruling(matrix: Matrix, reading: str, answers: list[frozenset[str]]) -> list[frozenset[str]]:
    return [a for a in answers if matrix.healthy[reading].isdisjoint(a)] or answers


def seen_in(book: Book, matrix: Matrix, taken: list[Taken], evidence: Evidence) -> list[Seen]:
    """The same for belief, and besides what may only speak for a fault. A computed reading and its inputs are a group."""
    group: dict[str, str] = {}
    for t in taken:
        if t.computed:
            for reading in (t.reading, *inputs_of(book, t.reading)):
                group.setdefault(reading, t.reading)
    seen = [
        Seen(reading, *answers_among(book, reading, answers), group.get(reading, reading))
        for reading, answers in evidence.items()
    ]
    return seen + [
        Seen(t.reading, *answers_among(book, t.reading, t.answers), group.get(t.reading, t.reading), clears=False)
        for t in taken
        if t.convicts and t.counts and t.reading in matrix.healthy
    ]


def masks_of(book: Book, matrix: Matrix, taken: list[Taken], evidence: Evidence) -> dict[str, int]:
    """Each reading to the rows that it fits.

    Where one bank or cylinder is out and another is not, what serves them all is not it: it would show in all of them.
    Of connections one may be bad alone, whatever part they belong to.
    """
    masks = {reading: matrix.fits(reading, answers) for reading, answers in evidence.items()}
    shared = sum(1 << i for i, row in enumerate(matrix.rows) if not serves_one(book, row.fault))
    for reading in masks:
        if book.of("readings")[reading].data.get("each") in ("bank", "cylinder"):
            every = [t for t in taken if t.clears and t.reading == reading and t.which is not None]
            out = [t for t in every if matrix.healthy[reading].isdisjoint(t.answers)]
            if any(_apart(one, other) for one in out for other in every if other not in out):
                masks[reading] &= ~shared
    return {reading: mask & matrix.all for reading, mask in masks.items()}


def _apart(one: Taken, other: Taken) -> bool:
    """Whether two banks or cylinders differ by more than a cause that they share may scatter: half the width of the band.

    Of two answers to a question any difference counts, and one too close to call is no difference.
    """
    if one.answers & other.answers:
        return False
    band = one.verdict.band
    if band is None or one.known is None or other.known is None:
        return True
    limits = [x for x in (band.low, band.high) if x is not None]
    width = limits[1] - limits[0] if len(limits) > 1 else abs(limits[0])
    return abs(one.known.value - other.known.value) >= width / 2


def serves_one(book: Book, fault: str) -> bool:
    """Whether a fault's part, or the part that it belongs to, serves one bank or one cylinder only."""
    record, component = book.of("faults").get(fault), ""
    component = record.data.get("part", "") if record else ""
    passed: set[str] = set()
    while component and component not in passed:
        passed.add(component)
        part = book.of("components").get(component)
        if part is None:
            return False
        if mapped(part.data).get("each", "none") != "none":
            return True
        component = part.data.get("part_of", "")
    return False
