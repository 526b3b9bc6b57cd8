"""Halves go away from zero, limits go inward."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bayleaf.quantities import round_half_away, round_inward, significant

finite = st.floats(-1e12, 1e12, allow_nan=False).filter(lambda x: x == 0 or abs(x) > 1e-12)
digits = st.integers(1, 12)


# Worked by hand: each is a tie, or is not one only because of its binary value.
@pytest.mark.parametrize(
    ("x", "count", "text"),
    [
        (0.25, 1, "0.3"),
        (-0.25, 1, "-0.3"),
        (2.5, 1, "3"),
        (0.125, 2, "0.13"),
        (298.6, 2, "300"),
        (1234.5, 3, "1230"),
        (9.996, 3, "10.0"),
        (0.5, 3, "0.500"),
        (0, 3, "0"),
        (-0.0, 2, "0"),
        (1.005, 3, "1.00"),
        (0.000012345, 2, "0.000012"),
        (Fraction(2, 3), 3, "0.667"),
        (Fraction(-5, 2), 1, "-3"),
        (Fraction(999999, 1000), 4, "1000"),
        (300.0, 3, "300"),
    ],
)
def test_significant_digits(x, count, text):
    assert significant(x, count) == text


def test_an_undefined_value_has_no_digits():
    for x in (float("nan"), float("inf"), -float("inf")):
        with pytest.raises(ValueError, match="has no digits"):
            significant(x, 3)


@given(finite, digits)
def test_a_rounded_value_is_never_farther_than_half_a_step_and_a_tie_grows(x, count):
    shown, true = Fraction(significant(x, count)), Fraction(x)
    if not true:
        return
    step = Fraction(10) ** (Decimal(x).adjusted() - count + 1)
    assert abs(shown - true) <= step / 2
    if abs(shown - true) == step / 2:
        assert abs(shown) > abs(true)


@given(finite, st.integers(-3, 6))
def test_rounding_to_decimals_agrees_with_whole_numbers_of_steps(x, decimals):
    step = Fraction(10) ** -decimals
    steps = abs(Fraction(x)) / step
    expected = (steps + Fraction(1, 2)).__floor__() * step * (-1 if x < 0 else 1)
    assert Fraction(round_half_away(x, decimals)) == expected


@given(finite, finite, digits)
def test_limits_never_widen(a, b, count):
    low, high = sorted((a, b))
    lower, upper = round_inward(low, high, count)
    if low < high:
        assert Fraction(low) <= Fraction(lower) <= Fraction(upper) <= Fraction(high)


def test_limits_round_inward_and_a_side_may_be_open():
    assert round_inward(248.2, 448.2, 3) == (249, 448)
    assert round_inward(None, 448.9, 3) == (None, 448)
    assert round_inward(-3.456, None, 2) == (Decimal("-3.4"), None)


def test_a_narrow_band_gets_the_digits_it_needs():
    lower, upper = round_inward(9.991, 9.999, 2)
    assert 9.991 <= lower < upper <= 9.999
