"""Pressures and the atmosphere."""

from __future__ import annotations

from ambiance import Atmosphere
from fluids import ATMOSPHERE_1976

from tests.reference.outside import PINT, against, published

Q = PINT.Quantity
EARTH = 6356766.0  # m, the radius by which the standard turns geopotential into geometric altitude


@against("pressure-units", "pint, default registry")
def _(reading):
    return {
        name: Q(reading, "Pa")
        for name in ("in_psi", "in_kilopascal", "in_bar", "in_inches_of_mercury", "in_inches_of_water")
    }


# NIST SP 811 (2008), Appendix B.8; recalled, not open.
published(
    "pressure-units",
    "NIST SP 811 table B.8",
    rel=3e-7,
    rows=[
        ({"reading": "1 psi"}, {"in_kilopascal": "6.894757 kPa"}),
        ({"reading": "1 bar"}, {"in_kilopascal": "100 kPa"}),
        ({"reading": "1 inHg"}, {"in_kilopascal": "3.386389 kPa"}),
        ({"reading": "100 inH2O"}, {"in_kilopascal": "24.90889 kPa"}),
    ],
)


@against("gauge-absolute-vacuum", "pint, default registry", floor=1e3)
def _(gauge_reading, manifold_vacuum, barometer):
    air = Q(barometer, "Pa")
    return {"absolute_of_gauge": Q(gauge_reading, "Pa") + air, "absolute_of_vacuum": air - Q(manifold_vacuum, "Pa")}


@against("standard-atmosphere", "fluids, ATMOSPHERE_1976", rel=2e-6)
def _(altitude):
    air = ATMOSPHERE_1976(EARTH * altitude / (EARTH - altitude))
    return {"barometer": air.P, "temperature": air.T, "density": air.rho}


@against("standard-atmosphere", "ambiance, Atmosphere (ICAO 1993)", rel=2e-6)
def _(altitude):
    air = Atmosphere(EARTH * altitude / (EARTH - altitude))
    return {"barometer": air.pressure[0], "temperature": air.temperature[0], "density": air.density[0]}


# U.S. Standard Atmosphere 1976, table I, geopotential altitude; recalled, not open.
published(
    "standard-atmosphere",
    "U.S. Standard Atmosphere 1976 table I",
    rel=1e-5,
    rows=[
        ({"altitude": "0 m"}, {"barometer": "101.325 kPa", "temperature": "288.15 K", "density": "1.225 kg/m3"}),
        ({"altitude": "1000 m"}, {"barometer": "89.8746 kPa", "temperature": "281.65 K", "density": "1.11164 kg/m3"}),
        ({"altitude": "2000 m"}, {"barometer": "79.4952 kPa", "temperature": "275.15 K", "density": "1.00649 kg/m3"}),
        ({"altitude": "3000 m"}, {"barometer": "70.1085 kPa", "temperature": "268.65 K", "density": "0.909122 kg/m3"}),
        ({"altitude": "5000 m"}, {"barometer": "54.0199 kPa", "temperature": "255.65 K", "density": "0.736116 kg/m3"}),
    ],
)


@against("regulator-rail-pressure", "pint, default registry", floor=1e3)
def _(set_pressure, manifold_vacuum, boost):
    return {"rail": Q(set_pressure, "Pa") - Q(manifold_vacuum, "Pa") + Q(boost, "Pa")}


@against("regulator-rise", "pint, default registry")
def _(manifold_vacuum):
    return {"rise": Q(manifold_vacuum, "Pa")}


@against("injector-pressure-layouts", "pint, balance of absolute pressures", floor=1e3)
def _(set_pressure, manifold_vacuum, boost):
    air = Q(101325, "Pa")  # any barometer: it must not matter
    manifold = air - Q(manifold_vacuum, "Pa") + Q(boost, "Pa")
    referenced = manifold + Q(set_pressure, "Pa")
    return {
        "referenced_gauge": referenced - air,
        "referenced_across": referenced - manifold,
        "in_tank_across": air + Q(set_pressure, "Pa") - manifold,
        "throttle_body_across": Q(set_pressure, "Pa"),
    }
