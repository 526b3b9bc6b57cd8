"""A page says the number as written first, then the other system of units; limits round inward."""

from __future__ import annotations

from bayleaf.quantities import show, show_band, to_si
from tests.quantities.test_quantity import air, rail, ratio


def test_a_value_is_shown_in_both_systems():
    assert show(to_si(43.5, "psi", "gauge"), rail) == "43.5 psi (300 kPa)"


def test_the_unit_it_was_written_in_comes_first_as_it_was_typed():
    assert show(300_000.0, rail, unit="kPa", written="300") == "300 kPa (43.5 psi)"
    assert show(to_si(43.5, "psi", "gauge"), rail, written="43.50") == "43.50 psi (300 kPa)"
    assert show(300_000.0, rail, unit="bar", written="3") == "3 bar (43.5 psi, 300 kPa)"


def test_a_pure_number_has_no_unit_and_no_second_form():
    assert show(14.7, ratio) == "14.7"


def test_temperatures_carry_their_sign():
    assert show(298.15, air, digits=3) == "77.0 °F (25.0 °C)"


# 36 psi is 248.21 kPa and 65 psi is 448.16 kPa (NIST SP 811 factor 6.894757, recalled): never shown wider.
def test_limits_round_inward():
    assert show_band(36, 65, "psi", rail) == "36–65 psi (249–448 kPa)"


def test_a_side_may_be_open():
    assert show_band(None, 65, "psi", rail) == "at most 65 psi (448 kPa)"
    assert show_band(36, None, "psi", rail) == "at least 36 psi (249 kPa)"


def test_negative_limits_are_joined_by_a_word_and_exact_ones_gain_no_zeros():
    assert show_band(-40, 120, "degC", air) == "-40 to 120 °C (-40 to 248 °F)"


def test_typed_limits_keep_their_digits():
    assert show_band(43.5, 44, "psi", rail, written=("43.50", "44.0")).startswith("43.50–44.0 psi (")
