"""The next test of a job: proposals in their order, and when to stop testing and repair."""

from __future__ import annotations

from typing import NamedTuple

from bayleaf.diagnosis.belief.belief import Belief
from bayleaf.diagnosis.car.conditions import prevented_by
from bayleaf.diagnosis.faults.matrix import Matrix
from bayleaf.diagnosis.plan.actions import actions_of
from bayleaf.diagnosis.plan.choose import Proposal, proposals_of
from bayleaf.diagnosis.plan.outcomes import outcomes_of
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.records import Book, Record, listed

ENOUGH = 0.9  # of the belief inside the book in one repair: testing stops


class Repair(NamedTuple):
    """One repair, a procedure or words, with its share of the belief inside the book and the faults that it mends."""

    repair: str
    share: float
    faults: tuple[str, ...]

    @property
    def enough(self) -> bool:
        """Whether testing may stop here."""
        return self.share >= ENOUGH


def next_tests(
    desk: Desk,
    matrix: Matrix,
    belief: Belief,
    fits: int,
    job: Record | None,
    felt: tuple[str, ...],
    done: frozenset[str],
) -> tuple[Proposal, ...]:
    """The tests worth doing on this car with what the shop has, the next one first."""
    shop = job.data.get("shop") if job else None
    tools = frozenset(listed(shop)) if shop is not None else None
    actions = actions_of(desk.book, matrix.car, tools, prevented_by(desk.book, felt), done)
    actions = [a._replace(readings={r: i for r, i in a.readings.items() if r in matrix.healthy}) for a in actions]
    outcomes = {key: outcomes_of(desk, matrix.car, job, *key) for action in actions for key in action.readings.items()}
    return tuple(proposals_of(matrix, belief, fits, actions, outcomes))


def repairs_left(book: Book, matrix: Matrix, belief: Belief, fits: int) -> list[Repair]:
    """The repairs of what fits every reading, the likeliest first, with their share of the belief inside the book."""
    inside = sum(share for i, share in enumerate(belief.rows) if fits >> i & 1)
    shares: dict[str, float] = {}
    faults: dict[str, list[str]] = {}
    for fault, share in belief.of_faults(matrix.rows, fits).items():
        for repair in _repairs(book, fault):
            shares[repair] = shares.get(repair, 0.0) + share / inside
            faults.setdefault(repair, []).append(fault)
    return [Repair(r, s, tuple(faults[r])) for r, s in sorted(shares.items(), key=lambda item: (-item[1], item[0]))]


def _repairs(book: Book, fault: str) -> list[str]:
    return [m if isinstance(m, str) else m["words"] for m in listed(book.of("faults")[fault].data.get("mended_by"))]


def never_apart(matrix: Matrix, belief: Belief, fits: int, proposals: tuple[Proposal, ...]) -> list[tuple[str, ...]]:
    """The likeliest faults that no proposed test is sure to part from each other, in groups of two or more."""
    readings = {reading for proposal in proposals for reading in proposal.action.readings}
    shares = belief.of_faults(matrix.rows, fits)
    likely = [fault for fault, share in shares.items() if share >= 0.02 * sum(shares.values())]
    rows = {fault: [r for r in matrix.rows_in(fits) if r.fault == fault] for fault in likely}

    def alike(one: str, other: str) -> bool:
        return any(
            all(not a.answers.get(r) or not b.answers.get(r) or a.answers[r] & b.answers[r] for r in readings)
            for a in rows[one]
            for b in rows[other]
        )

    groups: list[list[str]] = []
    for fault in likely:
        group = next((g for g in groups if all(alike(fault, other) for other in g)), None)
        if group is None:
            groups.append([fault])
        else:
            group.append(fault)
    return [tuple(group) for group in groups if len(group) > 1]
