"""When no single fault fits: what to doubt, which two faults would fit, and which readings contradict each other."""

from __future__ import annotations

from functools import reduce
from itertools import combinations
from math import prod
from operator import and_

from bayleaf.diagnosis.belief.belief import CONSTANTS, Constants, complaint, feels_of
from bayleaf.diagnosis.belief.evidence import Evidence
from bayleaf.diagnosis.faults.matrix import Matrix, Row
from bayleaf.diagnosis.jobs.judgement import Doubt, Pair
from bayleaf.diagnosis.plan.actions import takers_of
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.records import Book


def doubts_of(
    book: Book, matrix: Matrix, candidates: int, masks: dict[str, int], repairs: dict[str, int], taken: list[Taken]
) -> tuple[Doubt, ...]:
    """Each single reading, and each repair, that if doubted brings faults back; the one that brings fewest comes first."""
    takers, doubts = takers_of(book, matrix.car), []
    for doubted in masks:
        left = reduce(and_, (mask for reading, mask in masks.items() if reading != doubted), candidates)
        if left:
            minutes = takers.get(doubted)
            doubts.append(Doubt(doubted, tuple(matrix.faults_in(left)), minutes=minutes))
    for fault, mended in repairs.items():
        # If it was not mended after all, it must still fit every reading, those from before the repair too.
        left = sum(1 << i for i, row in enumerate(matrix.rows) if row.fault == fault)
        for t in taken:
            if t.verdict.answers is not None and (t.clears or (t.outdated and t.places[-1] < mended)):
                left &= matrix.fits(t.reading, t.verdict.answers)
        if left:
            doubts.append(Doubt(fault, (fault,), repair=True))
    return tuple(sorted(doubts, key=lambda doubt: len(doubt.brings)))


def contradictions_of(candidates: int, masks: dict[str, int]) -> tuple[tuple[str, ...], ...]:
    """Readings that no candidate shows at all, then pairs of readings that no candidate shows together."""
    fits = {reading: candidates & mask for reading, mask in masks.items()}
    alone = [(reading,) for reading, mask in fits.items() if not mask]
    both = [(a, b) for a, b in combinations(fits, 2) if fits[a] and fits[b] and not fits[a] & fits[b]]
    return (*alone, *both)


def pairs_of(
    book: Book,
    matrix: Matrix,
    felt: tuple[str, ...],
    evidence: Evidence,
    repaired: frozenset[str],
    constants: Constants = CONSTANTS,
) -> tuple[Pair, ...]:
    """The pairs of faults that would show every reading, by the belief in both, heaviest first.

    Of a pair, a reading shows what is not normal by either fault, and normal only when both allow it: that two faults
    may hide each other is left out, for it would make nearly every pair fit. A symptom is given by the fault of the two
    that gives it more surely.
    """
    pool = [i for i, row in enumerate(matrix.rows) if row.fault not in repaired]
    usable = sum(1 << i for i in pool)
    out, sound = {}, {}
    for reading, answers in evidence.items():
        healthy = matrix.healthy[reading]
        out[reading] = matrix.fits(reading, answers - healthy) if answers - healthy else 0
        sound[reading] = matrix.fits(reading, answers & healthy) if answers & healthy else 0
    feels = [feels_of(book, row.fault, row.stage) for row in matrix.rows]
    weight: dict[tuple[str, str], float] = {}
    for i in pool:
        row, partners = matrix.rows[i], usable
        for reading in evidence:
            if not out[reading] >> i & 1:
                partners &= out[reading] | (sound[reading] if sound[reading] >> i & 1 else 0)
        for j in range(i + 1, len(matrix.rows)):
            other = matrix.rows[j]
            if partners >> j & 1 and other.fault != row.fault:
                pair = (row.fault, other.fault)
                both = row.weight * other.weight * complaint(_together(feels[i], feels[j]), felt, constants)
                shown = prod(_shown(row, other, reading, answers) for reading, answers in evidence.items())
                weight[pair] = weight.get(pair, 0.0) + both * shown
    return tuple(Pair(pair, w) for pair, w in sorted(weight.items(), key=lambda item: (-item[1], item[0])))


def _together(one: dict[str, str], other: dict[str, str]) -> dict[str, str]:
    """How two faults at once are felt."""
    return {s: "always" if "always" in (one.get(s), other.get(s)) else "sometimes" for s in one | other}


def _shown(row: Row, other: Row, reading: str, answers: frozenset[str]) -> float:
    """How surely a pair shows a reading: as the one of the two that shows it more surely; one that is silent by half."""
    fits = [len(said & answers) / len(said) if (said := one.answers.get(reading)) else 0.5 for one in (row, other)]
    return max(fits)
