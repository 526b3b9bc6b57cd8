"""Belief: how the complaint and the readings of a job share their weight among the faults of a car.

Bayes' rule over the rows of a matrix, one fault at a time, with the readings taken as independent once the fault is
known (the naive model of Warner, Toronto and Veasy, 1961). A likelihood is written as its ratio to what a fault that
says nothing would give, so that silence and a verdict that excludes nothing are exactly 1.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import log, prod
from typing import NamedTuple

from bayleaf.diagnosis.faults.matrix import Matrix, Row
from bayleaf.diagnosis.faults.spared import felt_in
from bayleaf.diagnosis.verdicts.verdict import HIGH, LOW, MEASURED, NONE, NORMAL, TYPED_LOW
from bayleaf.records import Book

TYPED = frozenset({LOW, NORMAL, HIGH})  # what a typed number can say; a typed 0 reads low


class Constants(NamedTuple):
    """Every constant of belief: judgements of this book, in one place. None is fitted to jobs."""

    always: float = 0.9  # a symptom that the fault always gives is in the complaint
    sometimes: float = 0.35  # one that it sometimes gives
    unsaid: float = 0.03  # one that the fault does not name
    missing: float = 0.3  # a symptom that it always gives is not in the complaint
    misleads: float = 0.03  # a reading says something else than what is true
    outside: float = 0.08  # the cause is in no record of this book
    code_misleads: float = 0.3  # a stored code stands for something else than the readings that it reports
    history: float = 3.0  # how much likelier what happened before makes a fault


CONSTANTS = Constants()


class Seen(NamedTuple):
    """One reading as evidence.

    `answers` is every answer it may have been, `among` every answer it could have given. Readings of one `group` are
    worked out from each other and count once. One that does not clear may only speak for a fault, never against it.
    """

    reading: str
    answers: frozenset[str]
    among: frozenset[str]
    group: str
    clears: bool = True


class Belief(NamedTuple):
    """Shares that sum to 1: one for each row of the matrix, and one for a cause outside the book."""

    rows: tuple[float, ...]
    outside: float

    def of_faults(self, rows: Sequence[Row], mask: int = -1) -> dict[str, float]:
        """The share of each fault over its rows in `mask`, the greatest first; equal ones by id."""
        shares: dict[str, float] = {}
        for i, (row, share) in enumerate(zip(rows, self.rows, strict=True)):
            if mask >> i & 1:
                shares[row.fault] = shares.get(row.fault, 0.0) + share
        # Rounded, so that two that are equal but for the last bit go by id.
        return dict(sorted(shares.items(), key=lambda item: (-round(item[1], 12), item[0])))


def answers_among(book: Book, reading: str, answers: frozenset[str]) -> tuple[frozenset[str], frozenset[str]]:
    """(the answers as evidence, every answer that could have come instead).

    A question has its own list. A number gives low, normal or high, and *none* joins low; where a person said *none*
    or *unsteady* of a measured reading, all five could have been said.
    """
    record = book.of("readings")[reading]
    if "answers" in record.data:
        return answers, frozenset(record.data["answers"])
    if answers <= TYPED | TYPED_LOW and answers != {NONE}:
        return frozenset(LOW if answer == NONE else answer for answer in answers), TYPED
    return answers, frozenset(MEASURED)


def ratio(said: frozenset[str] | None, seen: Seen, constants: Constants = CONSTANTS) -> float:
    """How much likelier the reading is under a row that says `said` than under one that says nothing (None)."""
    if not said or seen.answers >= seen.among:
        return 1.0
    flat = len(seen.answers) / len(seen.among)
    if seen.among == TYPED:
        said = frozenset(LOW if answer == NONE else answer for answer in said)
    fit = len(said & seen.answers) / len(said)
    likelihood = (1 - constants.misleads) * fit + constants.misleads * flat
    return likelihood / flat if seen.clears else max(1.0, likelihood / flat)


def complaint(feels: dict[str, str], felt: Iterable[str], constants: Constants = CONSTANTS) -> float:
    """The likelihood of a complaint under a fault that is felt in these ways. It weighs and never clears."""
    felt = tuple(felt)
    if not felt:
        return 1.0
    weigh = {"always": constants.always, "sometimes": constants.sometimes}
    said = prod(weigh.get(feels.get(symptom, ""), constants.unsaid) for symptom in felt)
    return said * prod(constants.missing for symptom, how in feels.items() if how == "always" and symptom not in felt)


def feels_of(book: Book, fault: str, stage: str) -> dict[str, str]:
    """How a stage of a fault is felt: each symptom to *always* or *sometimes*."""
    record = book.of("faults").get(fault)
    return felt_in(record, stage) if record else {}


def row_ratio(row: Row, seen: Sequence[Seen], constants: Constants = CONSTANTS) -> float:
    """The product over groups of the strongest thing that one reading of the group says of a row."""
    strongest: dict[str, float] = {}
    for one in seen:
        said = ratio(row.answers.get(one.reading), one, constants)
        if abs(log(said)) > abs(log(strongest.get(one.group, 1.0))):
            strongest[one.group] = said
    return prod(strongest.values())


def believe(
    book: Book,
    matrix: Matrix,
    felt: Sequence[str],
    seen: Sequence[Seen],
    excluded: frozenset[str] = frozenset(),
    constants: Constants = CONSTANTS,
    *,
    likelier: frozenset[str] = frozenset(),
    others: Sequence[float] = (),
) -> Belief:
    """The belief in every row, and in a cause outside the book, for which every reading is flat.

    `excluded` are faults that were mended: the cause that is still there is none of them. `likelier` are those that the
    history of the car speaks for, and `others` holds for each row what else weighs for or against it.
    """
    prior = [
        0.0 if row.fault in excluded else row.weight * (constants.history if row.fault in likelier else 1.0)
        for row in matrix.rows
    ]
    total = sum(prior) or 1.0
    weights = [
        (1 - constants.outside)
        * (weight / total)
        * complaint(feels_of(book, row.fault, row.stage), felt, constants)
        * row_ratio(row, seen, constants)
        * other
        if weight
        else 0.0
        for row, weight, other in zip(matrix.rows, prior, others or [1.0] * len(prior), strict=True)
    ]
    outside = constants.outside * complaint(dict.fromkeys(felt, "sometimes"), felt, constants)
    everything = sum(weights) + outside
    return Belief(tuple(weight / everything for weight in weights), outside / everything)
