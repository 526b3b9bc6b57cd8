"""A seeded sample of slips: what was promised to be caught is caught, on the book as it stands.

`python -m tests.mutations` runs every mutant and prints the table.
"""

from __future__ import annotations

import copy
import random

import pytest

from tests.mutations.mutant import BLIND, CAUGHT, MOSTLY, OPERATORS, Mutant
from tests.mutations.run import detector, mutants, run

EACH, SEED = 2, 20


@pytest.fixture(scope="module")
def held():
    return detector()


@pytest.fixture(scope="module")
def rows(held):
    return {row.operator.name: row for row in run(held, EACH, SEED)}


def test_there_are_operators_enough_and_each_says_beforehand_what_must_happen():
    assert len(OPERATORS) >= 25 and len({o.name for o in OPERATORS}) == len(OPERATORS)
    assert all(o.expects in (CAUGHT, MOSTLY, BLIND) and len(o.why) > 10 for o in OPERATORS)


@pytest.mark.parametrize("operator", [o for o in OPERATORS if o.expects != BLIND], ids=lambda o: o.name)
def test_an_operator_finds_something_to_break(operator, held):
    assert next(iter(mutants(operator, held)), None) is not None


@pytest.mark.parametrize("name", [o.name for o in OPERATORS if o.expects == CAUGHT])
def test_a_slip_that_must_be_caught_is_caught(name, rows):
    assert [f"{m.kind}/{m.id}: {m.what}" for m in rows[name].missed] == []


def test_no_rule_breaks_down_on_a_slip(rows):
    assert [f"{m.kind}/{m.id}: {m.what}: {said}" for row in rows.values() for m, said in row.crashed] == []


def test_most_of_the_other_slips_are_caught(rows):
    seen = [seen for row in rows.values() if row.operator.expects == MOSTLY for _mutant, seen in row.seen]
    assert sum(bool(s.level) for s in seen) / len(seen) >= 0.65


def test_a_record_that_is_as_it_was_is_not_seen(held):
    records = random.Random(SEED).sample([r for r in held.book.records() if r.sound], 25)
    seen = {r.id: held.see(Mutant(r.kind, r.id, (), "nothing", copy.deepcopy(r.data))) for r in records}
    assert {id: s for id, s in seen.items() if s.level} == {}
