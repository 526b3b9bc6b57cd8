"""Every calculator against the outside. `python -m tests.reference` prints the table of worst relative errors."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bayleaf.formulas.calculator.worked import run_checks
from bayleaf.formulas.language.ranges import prove_range
from bayleaf.formulas.output.tabulate import tabulate
from tests.formulas.test_evaluate import BASE, UNITS, with_units
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


@pytest.mark.parametrize("id", IDS)
def test_its_dimensions_close_in_pint_too(id):
    calc = calculator(id)
    values = {name: one.default for name, one in calc.inputs.items()} | {
        name: one.value for name, one in calc.constants.items()
    }
    known = {
        name: _quantity(values[name], one.quantity.dimension) for name, one in {**calc.inputs, **calc.constants}.items()
    }
    expected = calc.evaluate()
    for name, line in calc.lines.items():
        known[name] = with_units(_decimal(line.plain), known)
        assert known[name].m_as(_unit(line.type.dimension)) == pytest.approx(expected[name], rel=1e-12, abs=1e-15)


def _decimal(node):
    """The tree with its exponents as decimals, where they stand as ratios."""
    text = repr(float(Fraction(node.text))) if node.kind == "number" else node.text
    return node._replace(text=text, args=tuple(map(_decimal, node.args)))


def _quantity(x: float, dimension: tuple):
    return UNITS.Quantity(x, _unit(dimension))


def _unit(dimension: tuple) -> str:
    return "*".join(f"{base}**{float(power)}" for base, power in zip(BASE, dimension))
