"""When no single fault fits: what to doubt, which two faults would fit, and which readings contradict each other."""

from __future__ import annotations

from itertools import combinations

from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.jobs.judgement import Doubt, Pair
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.records import Book, mapped

Evidence = dict[str, frozenset[str]]


def doubts_of(
    matrix: Matrix, candidates: int, evidence: Evidence, repairs: dict[str, int], taken: list[Taken]
) -> tuple[Doubt, ...]:
    """Each single reading, and each repair, that if doubted brings faults back; the one that brings fewest comes first."""
    found = []
    for doubted in evidence:
        left = candidates
        for reading, answers in evidence.items():
            left &= matrix.fits(reading, answers) if reading != doubted else matrix.all
        if left:
            found.append(Doubt(doubted, tuple(matrix.faults_in(left))))
    for fault, mended in repairs.items():
        # If it was not mended after all, it must still fit every reading, those from before the repair too.
        left = sum(1 << i for i, row in enumerate(matrix.rows) if row.fault == fault)
        for t in taken:
            if t.verdict.answers is not None and (t.counts or (t.outdated and t.places[-1] < mended)):
                left &= matrix.fits(t.reading, t.verdict.answers)
        if left:
            found.append(Doubt(fault, (fault,), repair=True))
    return tuple(sorted(found, key=lambda doubt: len(doubt.brings)))


def contradictions_of(matrix: Matrix, candidates: int, evidence: Evidence) -> tuple[tuple[str, ...], ...]:
    """Readings that no candidate shows at all, then pairs of readings that no candidate shows together."""
    fits = {reading: candidates & matrix.fits(reading, answers) for reading, answers in evidence.items()}
    alone = [(reading,) for reading, mask in fits.items() if not mask]
    both = [(a, b) for a, b in combinations(fits, 2) if fits[a] and fits[b] and not fits[a] & fits[b]]
    return (*alone, *both)


def pairs_of(
    book: Book, matrix: Matrix, felt: tuple[str, ...], evidence: Evidence, repaired: set[str]
) -> tuple[Pair, ...]:
    """The pairs of faults that would show every reading and explain everything felt, heaviest first.

    Of a pair, a reading shows what is not normal by either fault, and normal only when both allow it: that two faults
    may hide each other is left out, for it would make nearly every pair fit.
    """
    feel = {row.fault: set(mapped(book.of("faults")[row.fault].data.get("felt_as"))) for row in matrix.rows}
    wanted = set(felt)
    pool = [
        i for i, row in enumerate(matrix.rows) if row.fault not in repaired and (not wanted or feel[row.fault] & wanted)
    ]
    usable = sum(1 << i for i in pool)
    out, sound = {}, {}
    for reading, answers in evidence.items():
        healthy = matrix.healthy[reading]
        out[reading] = matrix.fits(reading, answers - healthy) if answers - healthy else 0
        sound[reading] = matrix.fits(reading, answers & healthy) if answers & healthy else 0
    weight: dict[tuple[str, str], float] = {}
    for i in pool:
        row, partners = matrix.rows[i], usable
        for reading in evidence:
            if not out[reading] >> i & 1:
                partners &= out[reading] | (sound[reading] if sound[reading] >> i & 1 else 0)
        for other in matrix.rows_in(partners >> (i + 1) << (i + 1)):
            if other.fault != row.fault and wanted <= feel[row.fault] | feel[other.fault]:
                pair = (row.fault, other.fault)
                weight[pair] = weight.get(pair, 0.0) + row.weight * other.weight
    return tuple(Pair(pair, w) for pair, w in sorted(weight.items(), key=lambda item: (-item[1], item[0])))
