"""What is proved by intervals holds wherever it is tried; what cannot hold is never proved."""

from __future__ import annotations

import math
from itertools import product

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from bayleaf.formulas.language.bounds import defined_everywhere
from bayleaf.formulas.language.errors import FormulaError
from tests.formulas.samples import COMPRESSOR, REGULATOR, calculator, record, samples

NAMES = st.sampled_from(["x", "y", "1", "2", "3", "0.5", "pi"])
LIMITS = st.sampled_from([-3, -1, 0, 0.5, 1, 2, 3, 50])


def grown(inner):
    pair = st.tuples(inner, inner)
    return st.one_of(
        st.builds(lambda sign, ab: f"({ab[0]} {sign} {ab[1]})", st.sampled_from("+-*/"), pair),
        st.builds(
            lambda a, n: f"({a}) ** {n}", inner, st.sampled_from(["2", "3", "(-1)", "(-2)", "0.5", "(1 / 3)", "0", "x"])
        ),
        st.builds(lambda name, a: f"{name}({a})", st.sampled_from(["sqrt", "exp", "log", "abs"]), inner),
        st.builds(lambda name, ab: f"{name}({ab[0]}, {ab[1]})", st.sampled_from(["min", "max"]), pair),
        st.builds(
            lambda sign, ab, cd: f"if({ab[0]} {sign} {ab[1]}, {cd[0]}, {cd[1]})",
            st.sampled_from(["<", "<=", ">", ">="]),
            pair,
            pair,
        ),
        st.builds(lambda a: f"(-({a}))", inner),
    )


def made(expression: str, limits: dict[str, tuple[float, float]]):
    inputs = {name: ("ratio", "1", (low + high) / 2, low, high) for name, (low, high) in limits.items()}
    return calculator(record(inputs, {"z": f"{expression} + 0 * ({' + '.join(limits)})"}, {"z": ("ratio", "1", 3)}))


@settings(max_examples=400, deadline=None, derandomize=True, database=None)
@given(st.recursive(NAMES, grown, max_leaves=8), *[st.tuples(LIMITS, LIMITS)] * 2)
def test_what_is_proved_holds_wherever_it_is_tried(expression, first, second):
    assume(first[0] < first[1] and second[0] < second[1])
    try:
        calc = made(expression, {"x": first, "y": second})
    except FormulaError:
        assume(False)
    if defined_everywhere(calc):
        middles = product(
            *(
                (one.low, (one.low + one.high) / 2, one.high, min(max(0.0, one.low), one.high))
                for one in calc.inputs.values()
            )
        )
        for values in [*samples(calc, 200), *map(list, middles)]:
            assert not any(map(math.isnan, calc.run(values))), f"{expression} at {values}"


@pytest.mark.parametrize(
    ("expression", "low", "high"),
    [
        ("1 / x", -1, 1),
        ("1 / x", 0, 1),
        ("sqrt(x)", -1e-9, 1),
        ("log(x)", 0, 1),
        ("exp(x)", 0, 800),
        ("x ** 0.5", -1, 1),
        ("x ** (-2)", -1, 1),
        ("x ** x", -1, 1),
        ("x ** x", 0, 1),
        ("sqrt(x - 1)", 1, 2),
        ("1 / (x - 3)", 2, 4),
        ("1 / (exp(-x) * exp(-x) * exp(-x))", 200, 250),
        ("if(x < 1, 1 / x, 2)", 0, 3),
    ],
)
def test_what_may_be_undefined_is_not_proved(expression, low, high):
    assert not defined_everywhere(made(expression, {"x": (low, high)}))


@pytest.mark.parametrize(
    ("expression", "low", "high"),
    [
        ("1 / x", 0.5, 2),
        ("1 / x", -2, -0.5),
        ("sqrt(x)", 0, 1),
        ("sqrt(x * x)", 0, 4),
        ("log(x)", 0.1, 1),
        ("exp(x)", -50, 50),
        ("x ** 0.5", 0, 1),
        ("x ** 3", -1, 1),
        ("x ** (-2)", -4, -1),
        ("sqrt(x ** 2)", -3, 2),
        ("1 / (1 + x)", 0, 9),
        ("max(x, 1) ** (1 / 3)", -4, 4),
        ("1 / (2 + abs(x))", -3, 3),
    ],
)
def test_what_is_defined_for_a_plain_reason_is_proved(expression, low, high):
    assert defined_everywhere(made(expression, {"x": (low, high)}))


def test_calculators_with_references_are_proved():
    assert defined_everywhere(calculator(REGULATOR)) and defined_everywhere(calculator(COMPRESSOR))
