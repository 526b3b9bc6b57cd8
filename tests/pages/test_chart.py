"""Charts: a line for each value or result, round marks, labels that stay apart and inside, and the same in words.

No outside source: these are our own rules for drawing; the values drawn are proved with the calculators.
"""

from __future__ import annotations

import math
import re
from itertools import pairwise

import pytest

from bayleaf.formulas.output.tabulate import named_results
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.pictures.axis import ticks
from bayleaf.pages.pictures.chart import chart, sentence
from bayleaf.pages.pictures.labels import Label, laid_out
from bayleaf.pages.pictures.plot import FONT, PHONE, SCREEN, WIDE, Line, drawing, wrapped
from tests.pages.shown import parsed, real_book


@pytest.fixture(scope="module")
def charts():
    """Id to (calculator, page of its figure) of every calculator that asks for a chart."""
    calculators = Uses(real_book()).calculators
    return {
        id: (calc, parsed(f"---\ntitle: x\n---\n\n{chart(calc)}\n")) for id, calc in calculators.items() if calc.chart
    }


@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        (0, 45, [0, 10, 20, 30, 40, 50]),
        (0, 1, [0, 0.2, 0.4, 0.6000000000000001, 0.8, 1.0]),
        (-20, 120, [-20, 0, 20, 40, 60, 80, 100, 120]),
        (36, 65, [35, 40, 45, 50, 55, 60, 65]),
    ],
)
def test_the_marks_of_an_axis_are_round_and_hold_the_data(low, high, expected):
    assert ticks(low, high, 7) == pytest.approx(expected)


def test_the_marks_along_the_bottom_stay_inside_the_span():
    assert ticks(3, 22, 7, inside=True) == [5, 10, 15, 20]
    assert ticks(4, 96, 4, inside=True) == [20, 40, 60, 80]  # steps of 50 would leave one mark


def test_a_chart_has_a_line_for_each_value_or_result_and_says_in_words_what_it_shows(charts):
    assert len(charts) > 50
    for id, (calc, tree) in charts.items():
        sides = calc.table.get("columns", {}) | calc.table["rows"]
        lines = sides[calc.chart["lines"]] if "lines" in calc.chart else named_results(calc, calc.chart)
        for svg in tree.css("svg"):
            assert len(svg.css("path.bl-curve")) == len(lines), id
            assert svg.attributes["role"] == "img" and svg.css_first("title").text() and svg.css_first("desc").text(), (
                id
            )
        assert len(tree.css("svg")) == 2 and tree.css_first("figcaption").text().count(" at ") >= 2 * len(lines), id


def test_no_word_of_a_chart_leaves_its_drawing(charts):
    for id, (_calc, tree) in charts.items():
        for svg, size in zip(tree.css("svg"), (SCREEN, PHONE)):
            for word in svg.css("text"):
                if "transform" in word.attributes:
                    continue
                long, at = WIDE * len(word.text()), float(word.attributes["x"])
                start = at - long * {"end": 1.0, "middle": 0.5}.get(word.attributes.get("text-anchor"), 0.0)
                assert start >= 0 and start + long <= size.width, (id, size.css, word.text())
                assert FONT / 2 <= float(word.attributes["y"]) <= size.height, (id, size.css, word.text())


def test_no_label_at_the_end_of_a_line_lies_over_another(charts):
    for id, (_calc, tree) in charts.items():
        for svg in tree.css("svg"):
            rows = sorted(
                float(word.attributes["y"]) for word in svg.css("text") if "text-anchor" not in word.attributes
            )
            assert all(b - a >= FONT for a, b in pairwise(rows)), id


def test_the_lines_of_a_chart_end_where_the_table_does(charts):
    # 18 inHg lift nothing off the gauge of a regulator in the tank; the end of its table is 21 inHg.
    _calc, tree = charts["injector-pressure-layouts"]
    assert "in tank gauge: 43.5 psi at 0 inHg, 43.5 psi at 21 inHg." in tree.css_first("figcaption").text()


def test_labels_that_want_one_place_share_it_evenly_and_stay_in_bounds():
    assert laid_out([Label(50, 10), Label(50, 10), Label(50, 10)], 0, 100) == [35, 45, 55]
    assert laid_out([Label(98, 10), Label(2, 10), Label(97, 10)], 0, 100) == [90, 0, 80]
    assert laid_out([Label(20, 10), Label(60, 20)], 0, 100) == [15, 50]


def test_a_line_is_broken_where_its_result_is_undefined():
    made = drawing(
        [Line("", "", [(0, 1), (1, 2), (2, math.nan), (3, 2), (4, 1)])], ("x", "y", ""), ("title", "words"), SCREEN
    )
    path = re.search(r'class="bl-curve" d="([^"]*)"', made)[1]
    assert path.count("M") == 2 and path.count("L") == 2 and "nan" not in made


def test_a_line_that_turns_says_where():
    assert (
        sentence(Line("a", "a", [(0, 1), (1, 3), (2, 0.5)]), "psi", "A")
        == "a: 1.00 A at 0 psi, highest 3.00 A at 1 psi, 0.500 A at 2 psi."
    )


def test_words_break_between_words_only():
    assert wrapped("throttle body across", 13) == ["throttle body", "across"]
    assert wrapped("incompressible", 5) == ["incompressible"]
