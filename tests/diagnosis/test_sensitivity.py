"""No constant of belief decides a job of the book: each halved and doubled, the first fault stays the first."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.diagnosis.belief.belief import CONSTANTS
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.records import Book, load

CLOSE = 2.0  # two faults of which one is less than twice as likely as the other are not told apart by the job


@pytest.fixture(scope="module")
def kb() -> Book:
    return load(Path(__file__).resolve().parents[2])


@pytest.mark.parametrize("constant", CONSTANTS._fields)
@pytest.mark.parametrize("by", [0.5, 2])
def test_first_ranks_stay(kb, constant, by):
    value = getattr(CONSTANTS, constant)
    moved = CONSTANTS._replace(**{constant: value * by if value > 1 else min(1.0, value * by)})
    for id, job in kb.of("jobs").items():
        plain, other = judge(kb, job), judge(kb, job, moved)
        first, now = plain.left_ids[0], other.left_ids[0]
        share = {item.fault: item.share for item in (*plain.left, *plain.besides)}
        assert now == first or share[first] < CLOSE * share[now], f"{id}: {first} and then {now}"
        assert {i.fault for i in (*plain.left, *plain.besides)} == {i.fault for i in (*other.left, *other.besides)}, id
