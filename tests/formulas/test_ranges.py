"""A calculator is tried over the ranges it states."""

from __future__ import annotations

from bayleaf.formulas.language.ranges import prove_range
from tests.formulas.samples import COMPRESSOR, calculator, record


def tried(expression: str, low: float, high: float, quantity: str = "ratio", **more):
    data = record(
        {"x": ("ratio", "1", (low + high) / 2, low, high)}, {"y": expression}, {"y": (quantity, "1", 3)}, **more
    )
    return prove_range(calculator(data))


def test_a_calculator_that_holds_has_no_problem():
    assert prove_range(calculator(COMPRESSOR)) == []


def test_a_division_by_zero_at_a_corner_is_found():
    (problem,) = tried("1 / x", 0, 10)
    assert (problem.line, problem.what, problem.given, problem.inputs) == ("y", "undefined", {"x": 0.0}, "x 0")


def test_a_root_of_a_negative_inside_the_range_is_found():
    (problem,) = tried("sqrt((x - 3) * (x - 4))", 0, 10)
    assert problem.what == "undefined" and 3 < problem.given["x"] < 4


def test_an_overflow_is_found():
    assert tried("exp(x) ** 8", 0, 1000)[0].what == "undefined"


def test_a_result_that_is_not_plausible_counts_in_the_table_not_in_every_corner():
    assert tried("x * x", 0, 4, "pressure-ratio") == []
    (problem,) = tried("x * x", 0, 4, "pressure-ratio", table={"rows": {"x": [1, 2, 4]}})
    assert (problem.what, problem.x) == ("not plausible", 16.0)


def test_only_the_first_undefined_line_is_reported_for_one_cause():
    data = record({"x": ("ratio", "1", 1, 0, 2)}, {"a": "1 / x", "b": "a + 1"}, {"b": ("ratio", "1", 3)})
    assert [problem.line for problem in prove_range(calculator(data))] == ["a"]


def test_many_inputs_stay_cheap_and_still_reach_both_ends():
    inputs = {f"x{n}": ("ratio", "1", 1, 0, 2) for n in range(12)}
    total = " + ".join(inputs)
    data = record(inputs, {"y": f"1 / ({total})"}, {"y": ("ratio", "1", 3)})
    assert prove_range(calculator(data))[0].what == "undefined"
