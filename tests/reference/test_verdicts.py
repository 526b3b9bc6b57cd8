"""Verdicts with a gauge's own error, worked by hand.

The rule is the guarded acceptance of JCGM 106:2012 (guard band w on the inside of a limit) with the undecided zone of
ILAC-G8; both recalled, neither text was open here. The dial is graded 3-2-3 % of span, as in ASME B40.100 grade B
(recalled). Each figure below was worked by hand; the working stands beside it.
"""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.compute import Desk, Known
from bayleaf.diagnosis.verdicts.instrument import instrument_of
from bayleaf.diagnosis.verdicts.verdict import judge_value, provable
from bayleaf.quantities import quantities_of, to_si
from tests.diagnosis.sample import book

BOOK = book()
RAIL = quantities_of(BOOK)["rail-pressure"]
GAUGE = instrument_of(BOOK, "gauge-0-100", RAIL)


def psi(x: float) -> float:
    return to_si(x, "psi", "gauge")


MAKER = Band(psi(53.5), psi(60.5), "typed", "53.5 to 60.5 psi")


@pytest.mark.parametrize(
    ("reading", "kind", "answers"),
    [
        # a = 2 % of 100 psi = 2 psi in the middle half of the scale, d = 1 psi, w = 2 + 1/2 = 2.5 psi.
        (57, "in band", {"normal"}),  # 53.5 + 2.5 = 56 <= 57 <= 58 = 60.5 - 2.5
        (54.5, "too close to call", {"none", "low", "normal"}),  # 53.5 - 2.5 = 51 <= 54.5 < 56
        (50.5, "low", {"none", "low"}),  # 50.5 < 51
        (56, "in band", {"normal"}),  # the window's own end belongs to it
        (58, "in band", {"normal"}),
        (55.9, "too close to call", {"none", "low", "normal"}),
        (58.1, "too close to call", {"normal", "high"}),
        (51, "too close to call", {"none", "low", "normal"}),  # beyond the limit by w, not by more than w
        (63, "too close to call", {"normal", "high"}),
        (63.1, "high", {"high"}),  # 60.5 + 2.5 = 63 < 63.1
        (0, "low", {"none", "low"}),  # a typed zero reads low; a fault that says none accepts it
    ],
)
def test_the_points_worked_by_hand(reading, kind, answers):
    verdict = judge_value(psi(reading), MAKER, GAUGE)
    assert (verdict.kind, set(verdict.answers)) == (kind, answers)


def test_the_window_inside_53_5_to_60_5_is_56_to_58():
    ((first, last),) = provable(MAKER, GAUGE)
    assert (first / psi(1), last / psi(1)) == (pytest.approx(56), pytest.approx(58))


def test_this_gauge_cannot_prove_a_limit_of_1_25_psi():
    # Near zero a = 3 psi, w = 3.5 psi, and 1.25 - 3.5 is below the scale.
    assert provable(Band(None, psi(1.25), "limit", "at most 1.25 psi"), GAUGE) == ()


def test_a_difference_with_one_instrument_uses_its_repeatability():
    # 44 - 36 = 8 psi; repeatability 0.5 psi + half a division twice = 1.5 psi, not twice 2.5 psi.
    known = {r: Known(psi(p), GAUGE.allowance(psi(p)), GAUGE) for r, p in (("hose-off", 44), ("idle", 36))}
    rise = Desk(BOOK).difference(known, "hose-off", "idle")
    assert (rise.value / psi(1), rise.allowance / psi(1)) == (pytest.approx(8), pytest.approx(1.5))
    verdict = judge_value(rise.value, Band(psi(6), psi(10), "limit", "6 to 10 psi"), allowance=rise.allowance)
    assert verdict.kind == "in band"  # 6 + 1.5 <= 8 <= 10 - 1.5


def test_a_difference_with_two_instruments_uses_both_errors():
    # 2.5 psi of the dial and 0.4 psi of the sender.
    sender = instrument_of(BOOK, "fine-sender", RAIL)
    known = {
        "hose-off": Known(psi(44), GAUGE.allowance(psi(44)), GAUGE),
        "idle": Known(psi(36), sender.allowance(psi(36)), sender),
    }
    assert Desk(BOOK).difference(known, "hose-off", "idle").allowance / psi(1) == pytest.approx(2.9)


def test_a_meter_of_1_percent_and_3_counts():
    # 0.27 V: 1 % is 0.0027 V, 3 counts of 0.01 V are 0.03 V, together 0.0327 V; 0.27 + 0.0327 > 0.3: too close.
    meter = instrument_of(BOOK, "meter", quantities_of(BOOK)["voltage-drop"])
    assert meter.allowance(0.27) == pytest.approx(0.0327)
    assert judge_value(0.27, Band(None, 0.3, "limit", "at most 0.3 V"), meter).kind == "too close to call"
    assert judge_value(0.26, Band(None, 0.3, "limit", "at most 0.3 V"), meter).kind == "in band"  # 0.26 + 0.0326
