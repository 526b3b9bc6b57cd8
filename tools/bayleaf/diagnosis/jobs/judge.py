"""Judge a job: what its readings contradict, how belief orders what they leave, and what to doubt when nothing fits.

Two layers. A hard mask says which faults a reading contradicts; belief orders what is left. The complaint weighs and
never clears. One fault at a time is assumed; only where no single fault fits are pairs looked for.
"""

from __future__ import annotations

from dataclasses import replace

from bayleaf.diagnosis.belief.before import likelier_after, reported, reported_by
from bayleaf.diagnosis.belief.belief import CONSTANTS, Constants, believe
from bayleaf.diagnosis.belief.evidence import evidence_of, masks_of, placed, seen_in, well
from bayleaf.diagnosis.car.car import car_of_job
from bayleaf.diagnosis.faults.matrix import Matrix, matrix_of
from bayleaf.diagnosis.jobs.agree import disagreements_in
from bayleaf.diagnosis.jobs.doubt import contradictions_of, doubts_of, pairs_of
from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.diagnosis.jobs.suspects import all_healthy, contradicted_by, endangers, ordered
from bayleaf.diagnosis.plan.next_test import never_apart, next_tests, repairs_left
from bayleaf.diagnosis.plan.unable import unable
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.diagnosis.verdicts.take import taken_in
from bayleaf.diagnosis.verdicts.taken import ABSENT, Taken
from bayleaf.records import Book, Record, listed


def judge(book: Book, job: Record, constants: Constants = CONSTANTS) -> Judgement:
    """The judgement on a job that has no error-level problems from the checks. Same records, same result."""
    car, desk = car_of_job(book, job.data), Desk(book)
    matrix = matrix_of(book, car)
    entries = listed(job.data.get("readings"))
    repairs = {e["repaired"]: i for i, e in enumerate(entries) if "repaired" in e}
    felt = tuple(listed(job.data.get("felt")))
    taken = [_in_time(book, matrix, felt, entries, t) for t in taken_in(desk, car, job)]
    taken = [_after_repairs(book, matrix, repairs, t) for t in taken]
    evidence = evidence_of(matrix, taken)
    masks, seen = masks_of(book, matrix, taken, evidence), seen_in(book, matrix, taken, evidence)
    codes, history = tuple(listed(job.data.get("codes"))), tuple(listed(job.data.get("history")))
    stored = reported_by(book, matrix, codes, {one.reading for one in seen})
    belief = believe(
        book,
        matrix,
        felt,
        seen,
        frozenset(repairs),
        constants,
        likelier=likelier_after(book, matrix, history),
        others=[reported(row, stored, constants) for row in matrix.rows],
    )
    candidates = sum(1 << i for i, row in enumerate(matrix.rows) if row.fault not in repairs)
    fits = candidates
    for mask in masks.values():
        fits &= mask
    out = [r for r, answers in evidence.items() if matrix.healthy[r].isdisjoint(answers)]
    left, besides = ordered(book, matrix, belief, fits, out)
    done = frozenset(e["reading"] for e in entries if "reading" in e) - {t.reading for t in taken if t.outdated}
    tests = next_tests(desk, matrix, belief, fits, job, felt, done) if left else ()
    judgement = Judgement(
        title=job.title,
        car=car,
        felt=felt,
        codes=codes,
        history=history,
        taken=tuple(taken),
        left=left,
        besides=besides,
        contradicted=contradicted_by(matrix, candidates, masks, seen, constants),
        outside=belief.outside,
        dangers=tuple(item.fault for item in besides if endangers(book, item.fault)),
        healthy=all_healthy(matrix, taken),
        disagreements=disagreements_in(desk, taken),
        repaired=tuple(repairs),
        comes_and_goes=job.data.get("comes_and_goes") is True,
        cannot=tuple((e["reading"], e["cannot"]) for e in entries if "cannot" in e),
        next=tests,
        unable=unable(desk, car, job, tests[0].action) if tests else (),
        repairs=tuple(repairs_left(book, matrix, belief, fits)),
        alike=tuple(never_apart(matrix, belief, fits, tests)),
        invented=job.data.get("invented") is True,
    )
    if left or not masks:
        return judgement
    return replace(
        judgement,
        doubts=doubts_of(book, matrix, candidates, masks, repairs, taken),
        contradictions=contradictions_of(candidates, masks),
        pairs=pairs_of(book, matrix, felt, evidence, frozenset(repairs), constants),
    )


def _in_time(book: Book, matrix: Matrix, felt: tuple[str, ...], entries: list[dict], taken: Taken) -> Taken:
    """A reading taken while the fault was absent, or one that the complaint itself prevents, clears nothing."""
    if taken.aside == ABSENT:
        return well(replace(taken, aside=""), matrix.healthy, ABSENT)
    present = all(entries[place].get("fault_was") == "present" for place in taken.places)
    return taken if present else placed(book, felt, matrix.healthy, taken)


def _after_repairs(book: Book, matrix: Matrix, repairs: dict[str, int], taken: Taken) -> Taken:
    """Set a reading aside that a repair made old: the mended fault may have caused it, or its inputs lie on both sides."""
    for fault, place in repairs.items():
        if not taken.counts or taken.places[0] > place:
            continue
        title = book.of("faults")[fault].title if fault in book.of("faults") else fault
        if taken.places[-1] > place:
            why = f"Its values were read before and after the repair ({title}): read all of them again."
            return replace(taken, aside=why, outdated=True)
        explains = fault in matrix.faults_in(matrix.fits(taken.reading, taken.verdict.answers))
        if explains and matrix.healthy.get(taken.reading, frozenset()).isdisjoint(taken.answers):
            why = f"Read before the repair ({title}), which may be why: read it again."
            return replace(taken, aside=why, outdated=True)
    return taken
