"""Every calculator against the outside. `python -m tests.reference` prints the table of worst relative errors."""

from __future__ import annotations

import pytest

from bayleaf.formulas import prove_range, run_checks, tabulate
from tests.reference.outside import book, calculator, everything

IDS = sorted(book().of("calculators"))


@pytest.mark.parametrize("outside", everything(), ids=lambda one: f"{one.calculator} / {one.source}")
def test_a_calculator_agrees_with_an_outside_reference(outside):
    count, worst = outside.worst()
    assert count > 0
    assert worst <= outside.rel


def test_every_calculator_is_compared_with_something_outside():
    assert sorted({one.calculator for one in everything()}) == IDS


@pytest.mark.parametrize("id", IDS)
def test_every_worked_check_comes_out(id):
    data = book().of("calculators")[id].data
    assert len(data["checks"]) >= 3
    assert [check for check in run_checks(calculator(id), data) if not check.ok] == []


@pytest.mark.parametrize("id", IDS)
def test_it_stays_defined_over_its_limits(id):
    assert prove_range(calculator(id)) == []


@pytest.mark.parametrize("id", IDS)
def test_every_cell_of_its_table_holds(id):
    assert {cell.mark for row in tabulate(calculator(id)).cells for cell in row} == {""}
