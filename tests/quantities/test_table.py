"""The table of units is what pint derives from our definitions, and conversions do what they say."""

from __future__ import annotations

import subprocess
import sys

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bayleaf.quantities import derive as derivation
from bayleaf.quantities import from_si, to_si, units

TRAPS = ["lambda", "F", "C", "Nm", "psig", "micropsi"]


def test_the_kept_table_is_the_derived_one():
    assert derivation.TABLE.read_text(encoding="utf-8") == derivation.text(derivation.derive())


@pytest.mark.parametrize("name", [*TRAPS, "psis", "meters", "ft*lb", "Psi", "psi "])
def test_the_table_is_closed(name):
    assert name not in units()


@pytest.mark.parametrize("name", TRAPS)
def test_our_definitions_do_not_know_what_a_unit_library_would_read_differently(name):
    with pytest.raises((pint.UndefinedUnitError, AttributeError)):
        derivation.registry(float).parse_units(name)


def test_pint_is_not_loaded_by_using_units():
    code = "import sys, bayleaf.quantities as q; q.to_si(1, 'psi', 'gauge'); sys.exit('pint' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], env={"PYTHONPATH": ":".join(sys.path)}).returncode == 0


def test_values_in_two_units_that_are_equal_are_equal_inside():
    assert to_si(1.1, "bar", "gauge") == to_si(110, "kPa", "gauge") == 110000.0
    assert to_si(0.1, "V", "none") == to_si(100, "mV", "none")
    assert to_si(300, "ppm", "none") == to_si(0.03, "%", "none") == 3e-4


def test_the_reference_decides_about_the_offset_not_the_unit():
    assert to_si(25, "degC", "absolute") == 298.15
    assert to_si(25, "degC", "difference") == 25.0
    assert from_si(298.15, "degC", "absolute") == 25.0
    assert from_si(5.0, "degF", "difference") == pytest.approx(9.0)


@given(st.sampled_from(sorted(units())), st.floats(-1e6, 1e6), st.sampled_from(["absolute", "none"]))
def test_a_value_comes_back_from_si_as_it_went(symbol, value, reference):
    unit = units()[symbol]
    lost = 1e-15 * (abs(unit.offset / unit.factor) + abs(value))
    assert from_si(to_si(value, symbol, reference), symbol, reference) == pytest.approx(
        value, rel=1e-13, abs=lost * 10 + 1e-300
    )  # below lie numbers that lose bits
