"""Which readings would part what is left, and by how much: the expected information of each, in bits."""

from __future__ import annotations

from math import log2

from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.jobs.belief import CONSTANTS, TYPED, Belief
from bayleaf.diagnosis.jobs.judgement import Parting
from bayleaf.diagnosis.verdicts.verdict import LOW, NONE
from bayleaf.records import Book, listed, mapped

MOST = 3


def parting_of(book: Book, matrix: Matrix, belief: Belief, fits: int, done: set[str]) -> tuple[Parting, ...]:
    """The readings that tell most a minute about the faults that fit, the best first; none where one fault is left."""
    if len(matrix.faults_in(fits)) < 2:
        return ()
    takers, partings = takers_of(book, matrix.car.systems), []
    for reading in matrix.normal:
        if reading in done or reading not in takers:
            continue
        bits = bits_of(book, matrix, belief, fits, reading)
        procedure, minutes = takers[reading]
        if bits > 0.05:  # less parts nothing that a person would act on
            partings.append(Parting(reading, bits, procedure, minutes))
    return tuple(sorted(partings, key=lambda p: (-p.bits / p.minutes, p.reading))[:MOST])


def takers_of(book: Book, systems: tuple[str, ...]) -> dict[str, tuple[str, float]]:
    """Each reading to the shortest procedure that takes it on a car with these systems, and its minutes."""
    takers: dict[str, tuple[str, float]] = {}
    for id, record in book.of("procedures").items():
        serves = listed(record.data.get("systems"))
        if not record.sound or record.data.get("status") == "retired" or (serves and not set(serves) & set(systems)):
            continue
        minutes = minutes_of(record.data.get("minutes"))
        for step in listed(record.data.get("steps")):
            reading = mapped(step.get("takes")).get("reading")
            if reading and (reading not in takers or minutes < takers[reading][1]):
                takers[reading] = (id, minutes)
    return takers


def minutes_of(minutes: object) -> float:
    """The minutes of a procedure, hands-on and waiting together; at least one."""
    if isinstance(minutes, dict):
        return max(1.0, float(minutes.get("hands", 0)) + float(minutes.get("waiting", 0)))
    return max(1.0, float(minutes)) if isinstance(minutes, int | float) else 1.0


def bits_of(book: Book, matrix: Matrix, belief: Belief, fits: int, reading: str) -> float:
    """The information that a reading is expected to give about which fault it is, among the rows that fit.

    A row that says nothing takes the prediction of those that speak, so that silence earns no test.
    """
    record = book.of("readings")[reading]
    among = sorted(record.data["answers"]) if "answers" in record.data else sorted(TYPED)
    share: dict[str, float] = {}
    joint: dict[str, dict[str, float]] = {}
    for i, row in enumerate(matrix.rows):
        said = row.answers.get(reading)
        if fits >> i & 1 and said:
            said = (
                frozenset(LOW if a == NONE else a for a in said) & set(among) if "answers" not in record.data else said
            )
            if not said:
                continue
            share[row.fault] = share.get(row.fault, 0.0) + belief.rows[i]
            cells = joint.setdefault(row.fault, dict.fromkeys(among, 0.0))
            for answer in among:
                fit = (1 - CONSTANTS.misleads) * (answer in said) / len(said) + CONSTANTS.misleads / len(among)
                cells[answer] += belief.rows[i] * fit
    total = sum(share.values())
    every = sum(b for i, b in enumerate(belief.rows) if fits >> i & 1)
    if not total or not every:
        return 0.0
    answered = {a: sum(cells[a] for cells in joint.values()) / total for a in among}
    bits = 0.0
    for fault, cells in joint.items():
        for answer in among:
            if cells[answer]:
                bits += cells[answer] / total * log2(cells[answer] / share[fault] / answered[answer])
    return bits * total / every
