"""Bands and what instruments can prove about them, against figures worked by hand."""

from __future__ import annotations

import shutil

import pytest

from bayleaf.diagnosis.verdicts.band import Band
from bayleaf.diagnosis.verdicts.instrument import Instrument
from bayleaf.pages.building.amounts import amount, band, basis
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.proof import as_difference, proof, proves
from bayleaf.pages.parts.steps import unfold
from bayleaf.records import load
from tests.data import book_of
from tests.pages.shown import ROOT, block

PSI = 6894.757293168361  # pascals a psi, NIST SP 811 table B.8 (recalled)
# A 0 to 100 psi gauge of grade 3-2-3 % of span, readable to 1 psi (ASME B40.100, recalled).
GAUGE = Instrument(
    "gauge",
    "Gauge",
    0,
    100 * PSI,
    readability=PSI,
    repeatability=PSI,
    zones=((0, 25 * PSI, 3 * PSI), (25 * PSI, 75 * PSI, 2 * PSI), (75 * PSI, 100 * PSI, 3 * PSI)),
)


def cells(view, low, high, spread=False, instrument=GAUGE):
    band = Band(low * PSI if low else None, high * PSI if high else None, "limit", "", spread)
    return [
        block(cell)
        for cell in proves(view, "rail-pressure-primed", view.desk.quantities["rail-pressure"], band, instrument)
    ]


def test_a_gauge_leaves_a_small_window_inside_a_makers_band(view):
    # Trade arithmetic by hand: 2 psi of error and half a psi of reading on each side of 53.5 to 60.5 leave 56 to 58.
    assert cells(view, 53.5, 60.5) == ["51.0 psi", "56.0 psi to 58.0 psi", "63.0 psi"]


def test_a_gauge_that_can_never_prove_a_band_is_named_before_it_is_connected(view):
    assert cells(view, 53.5, 57.5)[1] == "never: its error is too wide for this band"


def test_inside_a_spread_only_the_makers_figure_decides(view):
    assert cells(view, 36, 65, spread=True) == ["33.5 psi", "the maker's figure decides", "67.5 psi"]


def test_a_side_without_a_limit_and_a_limit_off_the_scale_are_said(view):
    # Below 25 psi the gauge may be out by 3 psi, and half a psi of reading: 20 less 3.5, and 20 and 3.5 up to its end.
    assert cells(view, 20, None) == ["16.5 psi", "23.5 psi to 100 psi", "no limit"]
    assert cells(view, 40, 99)[2] == "cannot: off its scale"


def test_a_difference_is_judged_by_repeatability_alone(view):
    assert as_difference(GAUGE).allowance(9 * PSI) == pytest.approx(2 * PSI)  # 1 psi repeats, 1 psi is read


def test_an_expectation_is_proved_where_its_calculator_starts(view):
    record = view.get("measure-regulator-response")
    said = block(proof(view, unfold(view, record), view.systems_of(record)))
    # 18 inHg are 8.841 psi (18 × 3.386389 / 6.894757, NIST SP 811 table B.8, recalled), and 1.5 psi either way, inward.
    assert (
        "typically 7.35–10.3 psi (50.7–71.0 kPa), at manifold vacuum 18 inHg as Regulator's rise with the hose off starts with"
        in said
    )
    assert "Surely in band" in said and "Is this gauge good enough" in said


def test_a_gauge_that_cannot_take_both_readings_proves_nothing_about_their_difference(view):
    record = view.get("measure-regulator-response")
    last = block(proof(view, unfold(view, record), view.systems_of(record))).rpartition(
        "Rise with the regulator hose off"
    )[2]
    assert "its scale does not reach: Fuel pressure gauge, 0 to 15 psi" in last


def test_a_window_that_rounding_closes_is_no_window(view):
    # Repeats within 1 psi, read to half a psi: 1.5 psi either way of a band 3 psi wide leave one point, 8.841 psi.
    half = Instrument("half", "Half", repeatability=PSI, readability=PSI / 2)
    assert (
        cells(view, 8.841 - 1.5, 8.841 + 1.5, instrument=as_difference(half))[1]
        == "never: its error is too wide for this band"
    )


def test_a_value_stands_as_written_first_and_in_the_other_unit_after_it(view):
    system = book_of(
        {
            "systems": {
                "s": {
                    "title": "S",
                    "g": {"value": 43.5, "unit": "psi"},
                    "r": {"min": 36, "max": 65, "unit": "psi"},
                    "x": {"max": 5, "unit": "furlong"},
                }
            }
        }
    ).of("systems")["s"]
    quantity = view.desk.quantities["rail-pressure"]
    assert block(amount(view, system, ("g",), quantity)) == "43.5 psi (300 kPa)"
    # 36 psi is 248.2 kPa and 65 psi is 448.2 kPa: inward they are 249 and 448.
    assert block(band(view, system, ("r",), quantity)) == "36–65 psi (249–448 kPa)"
    assert block(band(view, system, ("x",))) == "at most 5 furlong"


def test_a_basis_is_said_in_words(view):
    assert block(basis(view, {"practice": True})) == "common practice, no source"
    assert block(basis(view, {"invented": True})) == "INVENTED for the demonstration"
    assert (
        block(basis(view, {"source": "nist-sp-811", "place": "table B.8"}))
        == "NIST Special Publication 811, table B.8; recalled, the text was not open"
    )


def test_a_number_keeps_the_zeros_that_were_typed(tmp_path):
    (tmp_path / "kb" / "vocabulary").mkdir(parents=True)
    (tmp_path / "schemas").symlink_to(ROOT / "schemas")
    shutil.copy(ROOT / "kb" / "vocabulary" / "quantities.yaml", tmp_path / "kb" / "vocabulary")
    (tmp_path / "kb" / "vocabulary" / "fuels.yaml").write_text("x:\n  density: {value: 750.0, unit: kg/m3}\n")
    book = load(tmp_path)
    assert block(amount(Uses(book), book.get("x"), ("density",))).startswith("750.0 kg/m³")


def test_how_far_a_temperature_may_be_off_is_written_as_a_difference(view):
    # 20 degrees on the one scale are 36 on the other (9/5, by definition), with no zero in between.
    record = next(r for r in view.live("systems") if "compressor-outlet-steady" in r.data["bands"])
    off = amount(
        view, record, ("bands", "compressor-outlet-steady", "within"), view.quantity("compressor-outlet-steady")
    )
    assert block(off) == "20 °C difference (36.0 °F difference)"
