"""A quantity accepts its own spellings and says in one line why it takes no other."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bayleaf.quantities import QuantityError, quantities_of, quantity, read_value
from bayleaf.records import load

ROOT = Path(__file__).resolve().parents[2]
RAIL = {
    "title": "Fuel rail pressure",
    "reference": "gauge",
    "units": {"psi": ["PSI"], "kPa": [], "bar": []},
    "shown": {"customary": "psi", "si": "kPa"},
    "plausible": {"min": 0, "max": 160, "unit": "psi", "basis": {"practice": True}},
}
AIR = {
    "title": "Air temperature",
    "reference": "absolute",
    "units": {"degC": ["°C"], "degF": ["°F"], "K": []},
    "shown": {"customary": "degF", "si": "degC"},
    "plausible": {"min": -60, "max": 400, "unit": "degC", "basis": {"practice": True}},
}
VACUUM = {
    "title": "Manifold vacuum",
    "reference": "vacuum",
    "units": {"inHg": [], "kPa": []},
    "shown": {"customary": "inHg", "si": "kPa"},
    "plausible": {"min": 0, "max": 30, "unit": "inHg", "basis": {"practice": True}},
}
RATIO = {
    "title": "Air-fuel ratio",
    "reference": "none",
    "units": {"1": []},
    "shown": {"customary": "1", "si": "1"},
    "plausible": {"min": 4, "max": 40, "unit": "1", "basis": {"practice": True}},
}
rail, air, vacuum, ratio = (quantity(str(i), data) for i, data in enumerate((RAIL, AIR, VACUUM, RATIO)))


@pytest.mark.parametrize(
    ("text", "of", "value"),
    [
        ("43.5 psi", rail, (43.5, "psi")),
        ("43.5psi", rail, (43.5, "psi")),
        (" 43 PSI ", rail, (43.0, "psi")),
        ("-40 °C", air, (-40.0, "degC")),
        ("14.7", ratio, (14.7, "1")),
        (".5 bar", rail, (0.5, "bar")),
        ("1e3 kPa", rail, (1000.0, "kPa")),
        ("1.5E-1 bar", rail, (0.15, "bar")),
        ("1,000 kPa", rail, (1000.0, "kPa")),
        ("1,013.25kPa", rail, (1013.25, "kPa")),
        ("3. bar", rail, (3.0, "bar")),
        ("14.7 1", ratio, (14.7, "1")),
    ],
)
def test_a_value_is_read_in_any_accepted_spelling(text, of, value):
    assert read_value(text, of) == value


@pytest.mark.parametrize(
    ("text", "of", "says"),
    [
        ("43.5 psig", rail, "write psi; gauge or absolute is a field of the quantity, and this one is gauge"),
        ("43,5 psi", rail, "has a comma in its number; write a point"),
        ("1,01 psi", rail, "write a point; a comma only as in 1,000"),
        ("1,0134 psi", rail, "write a point; a comma only as in 1,000"),
        ("00 kPa", rail, "00 is not 0; a wire larger than number 0 counts down"),
        ("1013 mpsi", rail, "write psi, kPa or bar"),
        ("43 lb/h", rail, "write psi, kPa or bar"),
        ("43 mbar", rail, "write psi, kPa or bar"),
        ("43.5", rail, "has no unit; write 43.5 psi, kPa or bar"),
        ("43.5 kpa", rail, "did you mean kPa?"),
        ("25 C", air, "write degC"),
        ("77 F", air, "write degF"),
        ("14.7 lambda", ratio, "write 1"),
        ("much", rail, "is not a number with a unit; write it like 43.5 psi"),
        ("", rail, "is not a number"),
        ("1e psi", rail, "is not a unit"),
        ("nan psi", rail, "is not a number"),
        ("-18 inHg", vacuum, "a vacuum is a positive number; write 18 inHg"),
    ],
)
def test_anything_else_gets_one_line_that_helps(text, of, says):
    with pytest.raises(QuantityError) as caught:
        read_value(text, of)
    assert says in str(caught.value)
    assert "\n" not in str(caught.value)


@given(st.text(max_size=30))
def test_reading_raises_nothing_but_a_quantity_error(text):
    try:
        value, symbol = read_value(text, rail)
    except QuantityError:
        return
    assert symbol in rail.units.values() and value == value


@pytest.mark.parametrize(
    ("change", "path"),
    [
        ({"units": {"psy": []}}, ("units", "psy")),
        ({"units": {"psi": ["psig"], "kPa": []}}, ("units", "psi")),
        ({"units": {"psi": ["p"], "kPa": ["p"]}}, ("units", "kPa")),
        ({"units": {"psi": [], "kPa": [], "V": []}}, ("units", "V")),
        ({"shown": {"customary": "inHg", "si": "kPa"}}, ("shown", "customary")),
        ({"reference": "guage"}, ("reference",)),
        ({"plausible": {"min": 9, "max": 9, "unit": "psi"}}, ("plausible", "min")),
        ({"plausible": {"min": 0, "max": 9, "unit": "V"}}, ("plausible", "unit")),
        ({"reference": "absolute", "plausible": {"min": -1, "max": 9, "unit": "psi"}}, ("plausible", "min")),
    ],
)
def test_an_unsound_entry_names_the_field_that_is_wrong(change, path):
    with pytest.raises(QuantityError) as caught:
        quantity("rail-pressure", RAIL | change)
    assert caught.value.path == path


@pytest.mark.parametrize(
    ("spelling", "of"),
    [
        ("lb/h", "fuel-volume-flow"),
        ("inHg", "air-mass-flow"),
        ("mV", "pump-speed"),
        ("MPa", "duty"),
        ("mbr", "rail-pressure"),
    ],
)
def test_no_suggestion_changes_the_dimension_or_the_size(spelling, of):
    with pytest.raises(QuantityError) as caught:
        quantities_of(load(ROOT, []))[of].symbol(spelling)
    assert "did you mean" not in str(caught.value)


def test_a_width_of_a_temperature_is_a_difference():
    assert air.width(9, "delta_degF") == 5.0
    assert air.width(2, "K") == 2.0
    assert rail.width(1, "bar") == 100000.0
    for symbol in ("degC", "psi", "delta_bar", "delta_degR"):
        with pytest.raises(QuantityError):
            air.width(2, symbol)
    with pytest.raises(QuantityError):
        rail.width(2, "delta_degC")


def test_a_unit_that_is_not_text_is_refused_like_any_other():
    for read in (ratio.symbol, lambda unit: ratio.width(1, unit)):
        with pytest.raises(QuantityError, match="quote the unit"):
            read(1)


def test_plausible_limits_are_kept_in_si():
    assert air.plausible == (213.15, 673.15)
    assert rail.si(160, "PSI") == rail.plausible[1]


def test_only_sound_quantities_of_a_book_are_taken():
    class Entry:
        def __init__(self, data, sound=True):
            self.data, self.sound = data, sound

    class Shelf:
        def of(self, kind):
            assert kind == "quantities"
            return {"rail": Entry(RAIL), "bad": Entry(RAIL | {"reference": "guage"}), "odd": Entry({}, sound=False)}

    assert list(quantities_of(Shelf())) == ["rail"]
