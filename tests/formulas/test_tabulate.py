"""Tables and curves say which cells hold."""

from __future__ import annotations

import math

import pytest

from bayleaf.formulas.output.tabulate import curve, span_of, tabulate
from tests.formulas.samples import COMPRESSOR, calculator, record

CALC = calculator(COMPRESSOR)


def test_a_table_has_a_cell_for_each_row_and_column():
    table = tabulate(CALC)
    assert (table.rows.name, table.columns.name, [r.name for r in table.results]) == ("boost", "efficiency", ["outlet"])
    assert [len(row) for row in table.cells] == [3] * 5
    cell = table.cells[1][1]
    assert cell.x == CALC.evaluate({"boost": CALC.si("boost", 10, "psi")})["outlet"]
    assert (cell.shown, cell.other, cell.mark) == ("93.1", "200", "")


def test_a_table_may_have_one_column():
    table = tabulate(CALC, {"rows": {"boost": [5, 10]}, "result": "ratio"})
    assert table.columns is None
    assert [[cell.shown for cell in row] for row in table.cells] == [["1.34"], ["1.68"]]
    assert table.cells[0][0].other == ""


def test_cells_outside_the_limits_or_undefined_are_marked():
    rows = {"rows": {"x": [0, 1, 2, 20]}}
    data = record({"x": ("ratio", "1", 1, 0, 10)}, {"y": "2 / x"}, {"y": ("density-ratio", "1", 2)}, table=rows)
    cells = [row[0] for row in tabulate(calculator(data)).cells]
    assert [cell.mark for cell in cells] == ["undefined", "", "", "outside"]
    assert cells[0].shown == "undefined" and math.isnan(cells[0].x)


def test_a_result_that_is_not_plausible_is_marked():
    data = record(
        {"x": ("ratio", "1", 1, 0, 10)}, {"y": "x * x"}, {"y": ("density-ratio", "1", 2)}, table={"rows": {"x": [3, 4]}}
    )
    assert [row[0].mark for row in tabulate(calculator(data)).cells] == ["", "outside"]


def test_a_table_may_set_several_results_side_by_side():
    table = tabulate(CALC, {"rows": {"boost": [5, 10]}, "results": ["ratio", "outlet"]})
    assert [result.name for result in table.results] == ["ratio", "outlet"]
    assert [[cell.shown for cell in row] for row in table.cells] == [["1.34", "62.2"], ["1.68", "93.1"]]
    assert [cell.other for cell in table.cells[0]] == ["", "144"]


def test_a_curve_runs_from_one_end_of_its_span_to_the_other():
    boost = CALC.inputs["boost"]
    points = curve(CALC, "outlet", "boost", (boost.low, boost.high), 11, {"efficiency": 0.8})
    assert (points[0][0], points[-1][0], len(points)) == (boost.low, boost.high, 11)
    assert points[0][1] == pytest.approx(298.15)
    assert points[-1][1] == CALC.evaluate({"boost": boost.high, "efficiency": 0.8})["outlet"]


def test_a_chart_spans_the_table_unless_it_says_over_what():
    # 5 and 25 psi are the ends of the table, 14 psi is typed; 6894.757 Pa a psi, NIST SP 811 table B.8 (recalled).
    assert span_of(CALC) == pytest.approx((5 * 6894.757, 25 * 6894.757), rel=1e-6)
    narrow = calculator(COMPRESSOR | {"chart": {"x": "boost", "result": "outlet", "range": {"min": 0, "max": 14}}})
    assert span_of(narrow) == pytest.approx((0, 14 * 6894.757), rel=1e-6)
