"""The faults of a judgement: what is left and what fits besides, what is contradicted by which readings."""

from __future__ import annotations

from bayleaf.diagnosis.belief.belief import Belief, Constants, Seen, row_ratio
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.jobs.judgement import Contradicted, Suspect
from bayleaf.diagnosis.verdicts.taken import Taken
from bayleaf.diagnosis.verdicts.verdict import ANSWERED, IN_BAND
from bayleaf.records import Book, listed, mapped

MOST_OF_IT = 0.95  # of the belief in all that fits: what is *left*


def ordered(
    book: Book, matrix: Matrix, belief: Belief, fits: int, out: list[str]
) -> tuple[tuple[Suspect, ...], tuple[Suspect, ...]]:
    """(what is left, what fits besides), each by belief; `out` are the readings that are not as on a healthy car."""
    shares = belief.of_faults(matrix.rows, fits)
    layout, wanted, reached = layout_of(book), MOST_OF_IT * sum(shares.values()), 0.0
    stages: dict[str, list[str]] = {}
    speaks: dict[str, set[str]] = {}
    for row in matrix.rows_in(fits):
        stages.setdefault(row.fault, []).append(row.stage)
        speaks.setdefault(row.fault, set()).update(row.answers)
    left: list[Suspect] = []
    besides: list[Suspect] = []
    for fault, share in shares.items():
        data = book.of("faults")[fault].data
        mends = listed(data.get("mended_by"))
        (left if reached < wanted else besides).append(
            Suspect(
                fault,
                share,
                tuple(stages[fault]),
                mends=tuple(m for m in mends if isinstance(m, str)),
                words=tuple(m["words"] for m in mends if isinstance(m, dict)),
                elsewhere=not any(system in matrix.car.systems for system, _path in layout.paths(data.get("part", ""))),
                silent=tuple(r for r in out if r not in speaks[fault]),
            )
        )
        reached += share
    return tuple(left), tuple(besides)


def contradicted_by(
    matrix: Matrix, candidates: int, masks: dict[str, int], seen: list[Seen], constants: Constants
) -> tuple[Contradicted, ...]:
    """Every fault of which no stage fits, with the readings against each of its stages."""
    fits = candidates
    for mask in masks.values():
        fits &= mask
    kept = set(matrix.faults_in(fits))
    by: dict[str, dict[str, tuple[str, ...]]] = {}
    factor: dict[str, float] = {}
    graph: dict[str, set[str]] = {}
    for i, row in enumerate(matrix.rows):
        if candidates >> i & 1 and row.fault not in kept:
            against = tuple(reading for reading, mask in masks.items() if not mask >> i & 1)
            by.setdefault(row.fault, {})[row.stage] = against
            graph.setdefault(row.fault, set()).update(r for r in against if matrix.by_graph[r] >> i & 1)
            factor[row.fault] = max(
                factor.get(row.fault, 0.0), row_ratio(row, [s for s in seen if s.reading in against], constants)
            )
    return tuple(Contradicted(fault, stages, factor[fault], frozenset(graph[fault])) for fault, stages in by.items())


def all_healthy(matrix: Matrix, taken: list[Taken]) -> bool:
    """Whether something was read and every answer is that of a healthy car."""
    said = [t for t in taken if t.counts and t.reading in matrix.healthy]
    return bool(said) and all(
        t.verdict.kind in (IN_BAND, ANSWERED) and bool(t.answers & matrix.healthy[t.reading]) for t in said
    )


def endangers(book: Book, fault: str) -> bool:
    """Whether a fault is felt in a way that is itself a danger: fuel that is smelled or drips, exhaust gas in the car."""
    symptoms = mapped(book.of("faults")[fault].data.get("felt_as"))
    return any(listed(book.of("symptoms")[s].data.get("dangers")) for s in symptoms if s in book.of("symptoms"))
