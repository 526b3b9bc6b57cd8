"""What a test may show: the probability of each outcome under a row, with the chance that it decides nothing."""

from __future__ import annotations

from typing import NamedTuple

from bayleaf.diagnosis.belief.belief import CONSTANTS, TYPED
from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.instrument import instrument_of
from bayleaf.diagnosis.verdicts.verdict import LOW, NONE, NORMAL
from bayleaf.records import Record

UNDECIDED = "undecided"
HIDDEN = 0.5  # of what is low or high for this car, how much still lies inside a spread over many cars: a judgement
NEVER = 1.0


class Outcomes(NamedTuple):
    """The answers of a reading, and how probable it is that a true answer shows as *undecided* instead."""

    answers: tuple[str, ...]
    undecided: dict[str, float]


def outcomes_of(desk: Desk, car: Car, job: Record | None, reading: str, instrument: str) -> Outcomes:
    """The outcomes of one reading as this shop can take it."""
    record = desk.book.of("readings")[reading]
    if "answers" in record.data:
        return Outcomes(tuple(sorted(record.data["answers"])), {})
    answers = tuple(sorted(TYPED))
    band, _missing = band_of(desk, car, reading, job, {})
    quantity = desk.quantity(reading)
    if band is None or quantity is None:
        return Outcomes(answers, dict.fromkeys(answers, NEVER))
    if band.spread:
        return Outcomes(answers, {answer: NEVER if answer == NORMAL else HIDDEN for answer in answers})
    tool = instrument_of(desk.book, instrument, quantity) if instrument else None
    limit = next(x for x in (band.high, band.low) if x is not None)
    allowance = (tool.allowance(limit) or 0.0) if tool else 0.0
    width = (band.high - band.low) if band.low is not None and band.high is not None else abs(limit)
    close = min(NEVER, 2 * (allowance + band.slack) / width) if width else NEVER
    return Outcomes(answers, {answer: close if answer == NORMAL else close / 2 for answer in answers})


def table_of(
    matrix: Matrix, reading: str, outcomes: Outcomes, belief: tuple[float, ...], rows: list[int]
) -> list[tuple[float, ...]]:
    """For each of these rows the probability of every outcome; the last is *undecided*.

    A row that says nothing takes the prediction of those that speak, so that silence earns no test.
    """
    told: dict[int, tuple[float, ...]] = {}
    for i in rows:
        answers = _among(matrix.rows[i].answers.get(reading), outcomes.answers)
        if answers:
            told[i] = _shown(answers, outcomes)
    weight = sum(belief[i] for i in told)
    if not weight:
        return []
    mean = tuple(sum(belief[i] * told[i][k] for i in told) / weight for k in range(len(outcomes.answers) + 1))
    return [told.get(i, mean) for i in rows]


def _among(said: frozenset[str] | None, answers: tuple[str, ...]) -> frozenset[str]:
    """What a row says, in the answers that can be shown: *none* of a number reads low."""
    if not said:
        return frozenset()
    return frozenset(LOW if a == NONE and NONE not in answers else a for a in said) & frozenset(answers)


def _shown(said: frozenset[str], outcomes: Outcomes) -> tuple[float, ...]:
    n, misleads = len(outcomes.answers), CONSTANTS.misleads
    true = [(1 - misleads) * (a in said) / len(said) + misleads / n for a in outcomes.answers]
    undecided = [p * outcomes.undecided.get(a, 0.0) for a, p in zip(outcomes.answers, true, strict=True)]
    return (*(p - u for p, u in zip(true, undecided, strict=True)), sum(undecided))
