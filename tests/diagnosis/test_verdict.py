"""A verdict says no more than the instrument can prove."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.instrument import Instrument
from bayleaf.diagnosis.verdicts.verdict import conformance, judge_answer, judge_value, provable

EXACT = Instrument("exact", "exact gauge", fixed=0.0)
DIAL = Instrument(
    "dial", "dial gauge", low=0, high=100, zones=((0, 25, 3.0), (25, 75, 2.0), (75, 100, 3.0)), readability=1.0
)
DIGITAL = Instrument("digital", "digital gauge", low=-50, high=500, share=0.02, counts=0.3, resolution=0.1)


def limit(low: float | None, high: float | None) -> Band:
    return Band(low, high, "limit", "a band")


def spread(low: float, high: float) -> Band:
    return Band(low, high, "spread", "a spread", spread=True)


def said(verdict) -> tuple[str, set[str]]:
    return verdict.kind, set(verdict.answers or ())


@pytest.mark.parametrize(
    ("value", "kind", "answers"),
    [
        (4, "low", {"none", "low"}),
        (5, "in band", {"normal"}),
        (9, "in band", {"normal"}),
        (10, "in band", {"normal"}),
        (11, "high", {"high"}),
    ],
)
def test_without_error_a_limit_belongs_to_the_band(value, kind, answers):
    assert said(judge_value(value, limit(5, 10), EXACT)) == (kind, answers)


def test_near_a_limit_both_neighbours_are_possible():
    assert said(judge_value(52.5, limit(53.5, 60.5), DIAL)) == ("too close to call", {"none", "low", "normal"})
    assert said(judge_value(59.5, limit(53.5, 60.5), DIAL)) == ("too close to call", {"normal", "high"})


def test_in_a_band_narrower_than_the_error_all_three_are_possible():
    assert said(judge_value(50, limit(49.5, 50.5), DIAL)) == ("too close to call", {"none", "low", "normal", "high"})


def test_too_close_is_never_a_dead_end():
    assert "Zero and bleed" in judge_value(52.5, limit(53.5, 60.5), DIAL).what_to_do


def test_a_side_without_a_limit_says_nothing_about_that_side():
    assert said(judge_value(0.1, limit(None, 0.5), EXACT)) == ("in band", {"none", "low", "normal"})
    assert said(judge_value(0.9, limit(None, 0.5), EXACT)) == ("high", {"high"})
    assert said(judge_value(9, limit(5, None), EXACT)) == ("in band", {"normal", "high"})


def test_inside_a_spread_this_car_may_still_be_low_or_high():
    assert said(judge_value(50, spread(36, 65), EXACT)) == ("inside the usual spread", {"low", "normal", "high"})
    assert said(judge_value(35, spread(36, 65), EXACT)) == ("low", {"none", "low"})


def test_near_the_end_of_a_spread_it_may_have_failed():
    assert said(judge_value(36, spread(36, 65), DIAL)) == ("too close to call", {"none", "low", "normal", "high"})
    assert said(judge_value(65, spread(36, 65), DIAL)) == ("too close to call", {"low", "normal", "high"})


def test_an_implausible_value_is_no_information():
    verdict = judge_value(500, limit(5, 10), EXACT, plausible=(0, 160))
    assert (verdict.kind, verdict.answers) == ("not plausible", None)


def test_a_condition_not_met_is_no_information():
    verdict = judge_value(7, limit(5, 10), EXACT, not_met=("battery supported",))
    assert (verdict.kind, verdict.answers) == ("not valid", None)
    assert "battery supported" in verdict.what_to_do
    assert judge_answer("wet", True, ("battery supported",)).answers is None


def test_off_the_scale_is_no_information():
    assert judge_value(101, limit(53.5, 60.5), DIAL).kind == "not valid"


def test_without_a_band_the_maker_is_asked():
    verdict = judge_value(7, None, EXACT)
    assert (verdict.kind, verdict.answers) == ("no band", None)
    assert "maker's figure" in verdict.what_to_do


def test_an_unstated_error_is_said():
    assert (
        "the instrument states no error, so none is allowed for"
        in judge_value(7, limit(5, 10), Instrument("x", "x")).words
    )


def test_doubt_about_the_band_itself_widens_the_guard():
    sharp, soft = Band(5, 10, "expected", ""), Band(5, 10, "expected", "", slack=1.0)
    assert judge_value(5.5, sharp, EXACT).kind == "in band"
    assert judge_value(5.5, soft, EXACT).kind == "too close to call"


def test_what_a_person_said_is_taken_as_said():
    assert said(judge_answer("unsteady", False)) == ("unsteady", {"unsteady"})
    assert said(judge_answer("none", False)) == ("none", {"none"})
    assert said(judge_answer("none", True)) == ("answered", {"none"})


def test_the_error_is_added_in_the_worse_zone_where_two_meet():
    assert DIAL.allowance(25) == pytest.approx(3.5)
    assert DIAL.allowance(25.1) == pytest.approx(2.5)


def test_a_digital_error_is_percent_and_counts_without_readability():
    assert DIGITAL.allowance(100) == pytest.approx(2.3)


def test_a_percentage_is_counted_from_the_instruments_own_zero():
    celsius = Instrument("t", "thermometer", share=0.01, counts=1.0, zero=273.15)
    assert celsius.allowance(373.15) == pytest.approx(2.0)


def test_a_band_too_narrow_for_the_instrument_can_never_be_proved():
    assert provable(limit(50, 51.25), DIAL) == ()


def test_windows_on_both_sides_of_a_zone_limit_stay_apart():
    # 20 to 28 on the dial: w is 3.5 up to 25 and 2.5 above it, so 23.5 to 24.5, then 25 to 25.5.
    assert provable(limit(20, 28), DIAL) == (pytest.approx((23.5, 24.5)), pytest.approx((25, 25.5)))


def test_a_side_without_a_limit_ends_with_the_scale():
    assert provable(limit(None, 20), DIAL) == (pytest.approx((0, 16.5)),)


@given(st.floats(-40, 480), st.floats(-40, 200), st.floats(0.1, 100))
def test_what_is_provable_is_exactly_what_is_judged_in_band(value, low, width):
    band = limit(low, low + width)
    windows = provable(band, DIGITAL)
    edge = min((abs(value - end) for window in windows for end in window), default=1.0)
    if edge > 1e-6:
        assert any(first <= value <= last for first, last in windows) == (
            judge_value(value, band, DIGITAL).kind == "in band"
        )


@given(st.floats(0, 100), st.floats(0, 90), st.floats(0.1, 60))
def test_the_same_holds_for_a_dial_with_zones(value, low, width):
    band = limit(low, low + width)
    windows = provable(band, DIAL)
    edge = min((abs(value - end) for window in (*windows, (25, 75)) for end in window), default=1.0)
    if edge > 1e-6:
        assert any(first <= value <= last for first, last in windows) == (
            judge_value(value, band, DIAL).kind == "in band"
        )


@given(st.floats(0, 100), st.floats(0, 90), st.floats(0.1, 60), st.floats(-1, 1))
def test_the_truth_is_always_among_the_answers(shown, low, width, fraction):
    """Whatever the instrument's error within its limits, the answer for the true value is one that was kept."""
    band, truth = limit(low, low + width), shown + fraction * DIAL.allowance(shown)
    true_answer = "low" if truth < low else "high" if truth > low + width else "normal"
    verdict = judge_value(shown, band, DIAL)
    assert true_answer in verdict.answers or min(abs(truth - low), abs(truth - low - width)) < 1e-6


@pytest.mark.parametrize(
    ("value", "w", "wanted"),
    [
        (56.0, 2.5, 3.5 / 5),  # 53.5 to 58.5, in band from 55
        (55.0, 2.5, 1 / 2),  # on the limit
        (62.5, 2.5, 2 / 5),  # 60 to 65, in band to 62
        (58.5, 2.5, 1.0),  # 56 to 61, all in band
        (52.0, 2.5, 0.0),  # 49.5 to 54.5, none of it
        (58.5, 10.0, 7 / 20),  # the band is narrower than what the reading may be out by, on both sides
    ],
)
def test_the_conformance_probability_is_the_share_of_where_the_true_value_may_lie(value, w, wanted):
    """JCGM 106:2012 clause 7 with the rectangular density of JCGM 100:2008, 4.3.7 (recalled), worked by hand."""
    assert conformance(value, limit(55, 62), w) == pytest.approx(wanted)


def test_a_limit_on_one_side_has_a_conformance_probability_too():
    assert conformance(0.29, limit(None, 0.3), 0.02) == pytest.approx(0.03 / 0.04)


def test_only_a_value_too_close_to_call_has_a_conformance_probability():
    exact = Instrument("x", "x", fixed=2.5)
    assert judge_value(56, limit(55, 62), exact).conformance == pytest.approx(0.7)
    assert judge_value(58.5, limit(55, 62), exact).conformance is None
    assert judge_value(50, limit(55, 62), exact).conformance is None
