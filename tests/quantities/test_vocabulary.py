"""The quantities that the book itself is written in are sound."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.quantities import quantity, units
from bayleaf.records import load

ENTRIES = {id: record.data for id, record in load(Path(__file__).parents[2]).of("quantities").items()}
QUANTITIES = {id: quantity(id, data) for id, data in ENTRIES.items()}
PRESSURE, TEMPERATURE = (-1, 1, -2, 0, 0), (0, 0, 0, 1, 0)


def test_what_a_page_shows_can_be_typed_back():
    for id, known in QUANTITIES.items():
        for symbol in known.symbols():
            assert known.units.get(units()[symbol].shown) == symbol, (id, symbol)


def test_pressures_and_temperatures_say_their_reference_and_nothing_else_does():
    for id, known in QUANTITIES.items():
        assert (known.reference != "none") == (known.dimension in (PRESSURE, TEMPERATURE)), id


def test_temperature_differences_and_temperatures_do_not_share_units():
    for id, known in QUANTITIES.items():
        if known.dimension == TEMPERATURE:
            scales = [s for s in known.symbols() if units()[s].exact_offset]
            assert bool(scales) == (known.reference == "absolute"), id


def test_every_unit_is_used_by_a_quantity():
    assert set(units()) == {symbol for known in QUANTITIES.values() for symbol in known.symbols()}


# Common practice, no source: what the trade's readings run to must be inside what counts as plausible.
@pytest.mark.parametrize(
    ("id", "value", "unit"),
    [
        ("rail-pressure", 130, "psi"),
        ("direct-rail-pressure", 5000, "psi"),
        ("diesel-rail-pressure", 36000, "psi"),
        ("manifold-vacuum", 22, "inHg"),
        ("barometric-pressure", 101.325, "kPa"),
        ("boost-pressure", 45, "psi"),
        ("pulse-width", 20, "ms"),
        ("fuel-trim", -25, "%"),
        ("air-fuel-ratio", 14.7, "1"),
        ("pump-speed", 7000, "rpm"),
        ("exhaust-temperature", 950, "degC"),
        ("voltage", 90, "V"),
        ("injector-resistance", 16, "ohm"),
    ],
)
def test_usual_readings_are_plausible(id, value, unit):
    low, high = QUANTITIES[id].plausible
    assert low <= QUANTITIES[id].si(value, unit) <= high
