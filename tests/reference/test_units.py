"""Our unit factors against the outside: a printed table, a unit library's own registry, and a table of constants."""

from __future__ import annotations

import pint
import pytest
from scipy import constants

from bayleaf.quantities import to_si, units

# NIST SP 811 (2008), Appendix B.8, factors to seven digits. Recalled from memory, the document was not open.
PRINTED = {
    "psi": 6.894757e03,
    "inHg": 3.386389e03,
    "mmHg": 1.333224e02,
    "inH2O": 2.490889e02,
    "bar": 1.0e05,
    "lb": 4.535924e-01,
    "oz": 2.834952e-02,
    "lbf": 4.448222,
    "lbf.ft": 1.355818,
    "lbf.in": 1.129848e-01,
    "hp": 7.456999e02,
    "gal": 3.785412e-03,
    "qt": 9.463529e-04,
    "pt": 4.731765e-04,
    "floz": 2.957353e-05,
    "in": 2.54e-02,
    "ft": 3.048e-01,
    "mi": 1.609344e03,
    "in2": 6.4516e-04,
    "in3": 1.638706e-05,
    "ft3": 2.831685e-02,
    "ft3/min": 4.719474e-04,
    "mph": 4.4704e-01,
    "km/h": 2.777778e-01,
    "ft/s": 3.048e-01,
    "lb/h": 1.259979e-04,
    "lb/min": 7.559873e-03,
    "lb/gal": 1.198264e02,
    "lb/ft3": 1.601846e01,
    "Btu/lb": 2.326e03,
    "lb/hph": 1.689659e-07,
    "A.h": 3.6e03,
    "L": 1.0e-03,
    "degF": 0.5555556,
    "min": 60.0,
    "h": 3600.0,
}

# Our symbol in the words of pint's default registry. rpm and deg are left out: there a turn is 2 pi, here it is 1.
PINT = {
    "%": "percent",
    "hp_metric": "metric_horsepower",
    "mbar": "millibar",
    "kgf/cm2": "kilogram_force / centimeter**2",
    "ppm": "ppm",
    "mm2": "mm**2",
    "cm2": "cm**2",
    "in2": "inch**2",
    "m3": "m**3",
    "in3": "inch**3",
    "ft3": "foot**3",
    "floz": "fluid_ounce",
    "us": "microsecond",
    "m/s2": "m/s**2",
    "degC": "delta_degree_Celsius",
    "degF": "delta_degree_Fahrenheit",
    "delta_degC": "delta_degree_Celsius",
    "delta_degF": "delta_degree_Fahrenheit",
    "N.m": "newton*meter",
    "lbf.ft": "force_pound*foot",
    "lbf.in": "force_pound*inch",
    "Btu/lb": "Btu_it/pound",
    "uA": "microampere",
    "A.h": "ampere*hour",
    "mohm": "milliohm",
    "kohm": "kiloohm",
    "Mohm": "megaohm",
    "mohm/m": "milliohm/meter",
    "mohm/ft": "milliohm/foot",
    "ohm.m": "ohm*meter",
    "ohm.mm2/m": "ohm*mm**2/m",
    "uF": "microfarad",
    "uH": "microhenry",
    "1/K": "1/kelvin",
    "m3/h": "m**3/hour",
    "ft3/min": "foot**3/minute",
    "kg/m3": "kg/m**3",
    "lb/ft3": "pound/foot**3",
    "J/kg/K": "joule/kilogram/kelvin",
    "g/kWh": "g/(kW*hour)",
    "Pa.s": "pascal*second",
    "uPa.s": "micropascal*second",
    "lb/hph": "pound/(horsepower*hour)",
    "pt": "US_pint",
}
COUNTED = {"rpm", "deg", "1"}


@pytest.mark.parametrize("symbol", PRINTED)
def test_a_factor_agrees_with_the_printed_table_to_its_seven_digits(symbol):
    assert units()[symbol].factor == pytest.approx(PRINTED[symbol], rel=5e-7)


def test_every_factor_agrees_with_the_default_registry_of_pint():
    theirs = pint.UnitRegistry()
    for symbol, unit in units().items():
        if symbol in COUNTED:
            continue
        expected = (
            theirs.Quantity(1, PINT.get(symbol, symbol))
            .to_base_units()
            .m_as("*".join(f"{base}^{power}" for base, power in zip(("m", "kg", "s", "K", "A"), unit.dimension)))
        )
        assert unit.factor == pytest.approx(expected, rel=1e-12), symbol


# The International System counts 6000 r/min as 100 turns a second; ISO 80000-3 (rotational frequency), recalled.
def test_turns_are_counted():
    assert to_si(6000, "rpm", "none") == 100.0
    assert to_si(360, "deg", "none") == 1.0


def test_factors_agree_with_the_constants_of_scipy():
    expected = {
        "psi": constants.psi,
        "in": constants.inch,
        "ft": constants.foot,
        "mi": constants.mile,
        "lb": constants.pound,
        "oz": constants.oz,
        "gal": constants.gallon,
        "floz": constants.fluid_ounce,
        "bar": constants.bar,
        "hp": constants.hp,
        "lbf": constants.pound_force,
        "mph": constants.mph,
        "km/h": constants.kmh,
        "h": constants.hour,
        "L": constants.liter,
    }
    assert {symbol: units()[symbol].factor for symbol in expected} == pytest.approx(expected, rel=1e-12)
    # scipy's is the torr, a 760th of an atmosphere, which is 0.14 millionths below the conventional millimetre.
    assert units()["mmHg"].factor == pytest.approx(constants.mmHg, rel=2e-7)
    assert units()["Btu/lb"].factor * constants.pound == pytest.approx(constants.Btu_IT, rel=1e-12)


def test_absolute_temperatures_agree_with_scipy():
    for value in (-40.0, 0.0, 25.0, 212.0, 1300.0):
        assert to_si(value, "degC", "absolute") == pytest.approx(constants.convert_temperature(value, "C", "K"))
        assert to_si(value, "degF", "absolute") == pytest.approx(constants.convert_temperature(value, "F", "K"))


# The two definitions in use differ by 0.28 %: NIST SP 811 gives 3376.85 Pa at 60 °F (recalled).
def test_inches_of_mercury_are_the_conventional_ones():
    assert units()["inHg"].factor / 3376.85 == pytest.approx(1.0028, abs=1e-4)
