"""Judge a job: which faults its readings clear, which they leave, and what to doubt when they leave none.

Clearing is strict: a fault goes when, of each of its stages, at least one reading shows an answer that the stage never
gives. One fault at a time is assumed; where that fails, the pairs that would fit are found.
"""

from __future__ import annotations

from dataclasses import replace

from bayleaf.diagnosis.car.car import car_of_job
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.matrix import Matrix, Row, matrix_of
from bayleaf.diagnosis.faults.spared import felt_in
from bayleaf.diagnosis.jobs.doubt import contradictions_of, doubts_of, pairs_of
from bayleaf.diagnosis.jobs.judgement import Cleared, Judgement, Left
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.taken import Taken, taken_in
from bayleaf.records import Book, Record, listed, mapped

Evidence = dict[str, frozenset[str]]  # reading → every answer it may have been, first taken first


def judge(book: Book, job: Record) -> Judgement:
    """The judgement on a job that has no error-level problems from the checks. Same records, same result."""
    car = car_of_job(book, job.data)
    matrix = matrix_of(book, car)
    entries = listed(job.data.get("readings"))
    repairs = {e["repaired"]: i for i, e in enumerate(entries) if "repaired" in e}
    taken = [_after_repairs(book, matrix, repairs, t) for t in taken_in(Desk(book), car, job)]
    evidence = evidence_of(matrix, taken)
    felt = tuple(listed(job.data.get("felt")))
    explains, candidates = _explaining(book, matrix, felt, set(repairs))
    left = candidates
    for reading, answers in evidence.items():
        left &= matrix.fits(reading, answers)
    judgement = Judgement(
        title=job.title,
        car=car,
        felt=felt,
        explains=explains,
        taken=tuple(taken),
        left=_left(book, matrix, left, evidence),
        cleared=_cleared(matrix, candidates, left, evidence),
        repaired=tuple(repairs),
        comes_and_goes=job.data.get("comes_and_goes") is True,
        cannot=tuple((e["reading"], e["cannot"]) for e in entries if "cannot" in e),
        invented=job.data.get("invented") is True,
    )
    if not left:
        judgement = replace(
            judgement,
            doubts=doubts_of(matrix, candidates, evidence, repairs, taken),
            contradictions=contradictions_of(matrix, candidates, evidence),
        )
    mended = set().union(*(_felt_as(book, fault) for fault in repairs))
    unexplained = explains == "any" and not any(
        set(felt) <= _felt_as(book, item.fault) | mended for item in judgement.left
    )
    if evidence and (not left or unexplained):
        judgement = replace(judgement, pairs=pairs_of(book, matrix, felt, evidence, set(repairs)))
    return judgement


def evidence_of(matrix: Matrix, taken: list[Taken]) -> Evidence:
    """What the readings that count say. Of a reading taken for each cylinder, bank or connection, those that are out rule."""
    several: dict[str, list[frozenset[str]]] = {}
    for t in sorted((t for t in taken if t.counts and t.reading in matrix.healthy), key=lambda t: t.places[-1]):
        if t.verdict.answers is not None:
            several.setdefault(t.reading, []).append(t.verdict.answers)
    found = {}
    for reading, answers in several.items():
        out = [a for a in answers if matrix.healthy[reading].isdisjoint(a)]
        found[reading] = frozenset().union(*(out or answers))
    return found


def _after_repairs(book: Book, matrix: Matrix, repairs: dict[str, int], taken: Taken) -> Taken:
    """Set a reading aside that a repair made old: the mended fault may have caused it, or its inputs lie on both sides."""
    for fault, place in repairs.items():
        answers = taken.verdict.answers
        if answers is None or not taken.counts or taken.places[0] > place:
            continue
        title = book.of("faults")[fault].title if fault in book.of("faults") else fault
        if taken.places[-1] > place:
            why = f"Its values were read before and after the repair ({title}): read all of them again."
            return replace(taken, aside=why, outdated=True)
        explains = fault in matrix.faults_in(matrix.fits(taken.reading, answers))
        if explains and matrix.healthy.get(taken.reading, frozenset()).isdisjoint(answers):
            why = f"Read before the repair ({title}), which may be why: read it again."
            return replace(taken, aside=why, outdated=True)
    return taken


def _explaining(book: Book, matrix: Matrix, felt: tuple[str, ...], repaired: set[str]) -> tuple[str, int]:
    """How well single faults explain what is felt, and the mask of the candidates."""
    everything = mask_of(matrix, {row.fault for row in matrix.rows} - repaired)
    if not felt:
        return "no complaint", everything
    feel = [set(felt_in(book.of("faults")[row.fault], row.stage)) for row in matrix.rows]
    explaining_all = sum(1 << i for i, symptoms in enumerate(feel) if symptoms >= set(felt))
    explaining_any = sum(1 << i for i, symptoms in enumerate(feel) if symptoms & set(felt))
    if explaining_all:
        return "all", explaining_all & everything
    return "any" if explaining_any else "nothing", explaining_any & everything


def _felt_as(book: Book, fault: str) -> set[str]:
    record = book.of("faults").get(fault)
    return set(mapped(record.data.get("felt_as"))) if record else set()


def mask_of(matrix: Matrix, faults: set[str]) -> int:
    """The mask of all rows of these faults."""
    return sum(1 << i for i, row in enumerate(matrix.rows) if row.fault in faults)


def share_of(row: Row, evidence: Evidence) -> float:
    """The share of a row's either-or answers that the readings leave, each answer being equally likely."""
    share = 1.0
    for reading, answers in evidence.items():
        said = row.answers.get(reading)
        if said:
            share *= len(said & answers) / len(said)
    return share


def _left(book: Book, matrix: Matrix, left: int, evidence: Evidence) -> tuple[Left, ...]:
    rows = matrix.rows_in(left)
    weight: dict[str, float] = {}
    for row in rows:
        weight[row.fault] = weight.get(row.fault, 0.0) + row.weight * share_of(row, evidence)
    total, layout, found = sum(weight.values()), layout_of(book), []
    for fault, w in sorted(weight.items(), key=lambda item: (-item[1], item[0])):
        data = book.of("faults")[fault].data
        mends = listed(data.get("mended_by"))
        found.append(
            Left(
                fault,
                w,
                w / total,
                tuple(row.stage for row in rows if row.fault == fault),
                mends=tuple(m for m in mends if isinstance(m, str)),
                words=tuple(m["words"] for m in mends if isinstance(m, dict)),
                elsewhere=not any(system in matrix.car.systems for system, _path in layout.paths(data.get("part", ""))),
            )
        )
    return tuple(found)


def _cleared(matrix: Matrix, candidates: int, left: int, evidence: Evidence) -> tuple[Cleared, ...]:
    against = {reading: ~matrix.fits(reading, answers) for reading, answers in evidence.items()}
    kept = set(matrix.faults_in(left))
    by: dict[str, dict[str, tuple[str, ...]]] = {}
    for i, row in enumerate(matrix.rows):
        if candidates >> i & 1 and row.fault not in kept:
            by.setdefault(row.fault, {})[row.stage] = tuple(r for r, mask in against.items() if mask >> i & 1)
    return tuple(Cleared(fault, stages) for fault, stages in by.items())
