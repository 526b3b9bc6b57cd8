"""The fault matrix: for every stage of every fault of a car, the answers that each reading may give.

Rows are stages. A set of rows is a Python int used as a bit mask, bit i for row i, so that clearing faults is one `&`.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple, cast

from bayleaf.diagnosis.car.car import Car, car_of_system, faults_of, readings_of
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.stages import Answers, healthy_of, is_diagnosis, parts_of
from bayleaf.records import Book, mapped

WEIGHTS = {"common": 9, "occasional": 3, "rare": 1}


class Row(NamedTuple):
    """One stage of one fault. `answers` leaves out the readings that may give any answer."""

    fault: str
    stage: str
    weight: float  # the fault's commonness, shared equally by its stages
    answers: dict[str, frozenset[str]]


class Matrix(NamedTuple):
    """`healthy` maps every reading of the car that diagnosis uses to the answers of a healthy car, in the book's order."""

    car: Car
    rows: tuple[Row, ...]
    healthy: dict[str, frozenset[str]]
    said: dict[str, dict[str, int]]  # reading → answer → mask of the rows that may give it
    silent: dict[str, int]  # reading → mask of the rows that say nothing about it
    by_graph: dict[str, int]  # reading → mask of the rows that are healthy by the graph alone

    @property
    def all(self) -> int:
        """The mask of all rows."""
        return (1 << len(self.rows)) - 1

    def fits(self, reading: str, answers: Iterable[str] | None) -> int:
        """The rows that may give one of these answers; None is no information."""
        if answers is None or reading not in self.said:
            return self.all
        mask = self.silent[reading]
        for answer in answers:
            mask |= self.said[reading].get(answer, 0)
        return mask

    def rows_in(self, mask: int) -> list[Row]:
        """The rows of a mask, in order."""
        return [row for i, row in enumerate(self.rows) if mask >> i & 1]

    def faults_in(self, mask: int) -> list[str]:
        """The faults that have at least one row in the mask, in order."""
        return list(dict.fromkeys(row.fault for row in self.rows_in(mask)))


def is_measured(book: Book, reading: str) -> bool:
    """Whether the reading is a number, typed or computed, and not a question with its own list of answers."""
    return "answers" not in book.of("readings")[reading].data


def matrix_of(book: Book, car: Car) -> Matrix:
    """The matrix of a car: every fault it can have, and the readings that diagnosis takes or a fault speaks about.

    A book keeps the matrices that were asked for, because many jobs are about one car.
    """
    kept = cast("list[Matrix]", book.kept.setdefault("matrices", []))
    if not any(matrix.car == car for matrix in kept):
        kept.append(_matrix(book, car))
    return next(matrix for matrix in kept if matrix.car == car)


def _matrix(book: Book, car: Car) -> Matrix:
    layout = layout_of(book)
    here = dict.fromkeys(readings_of(book, layout, car))
    rows: list[Row] = []
    spared: list[Answers] = []  # row by row, what the graph alone says
    for fault in faults_of(book, layout, car):
        stages = parts_of(book, layout, car, fault, list(here))
        weight = WEIGHTS.get(book.of("faults")[fault].data.get("commonness", ""), 1) / max(1, len(stages))
        for stage, (said, by_graph) in stages.items():
            rows.append(Row(fault, stage, weight, by_graph | {r: a for r, a in said.items() if r in here}))
            spared.append(by_graph)
    spoken = set().union(*(row.answers for row in rows))
    used = [r for r in here if r in spoken or is_diagnosis(book.of("readings")[r])]
    masks: dict[str, dict[str, int]] = {reading: {} for reading in used}
    silent = dict.fromkeys(used, (1 << len(rows)) - 1)
    for i, row in enumerate(rows):
        for reading, answers in row.answers.items():
            silent[reading] &= ~(1 << i)
            for answer in answers:
                masks[reading][answer] = masks[reading].get(answer, 0) | 1 << i
    graph_masks = {r: sum(1 << i for i, answers in enumerate(spared) if r in answers) for r in used}
    return Matrix(car, tuple(rows), {r: healthy_of(book, r, car.systems) for r in used}, masks, silent, graph_masks)


def matrix_of_system(book: Book, system: str) -> Matrix:
    """The matrix of one system looked at on its own, with every feature it may have."""
    return matrix_of(book, car_of_system(book, system))


def one_sided(book: Book, car: Car) -> dict[str, str]:
    """Readings whose general band has a limit on one side only → the answer that cannot be told from normal."""
    missing: dict[str, str] = {}
    for system in car.systems:
        for reading, band in mapped(book.of("systems")[system].data.get("bands")).items():
            if isinstance(band, dict) and "expected" not in band and ("min" in band) != ("max" in band):
                missing[reading] = "high" if "min" in band else "low"
    return missing
