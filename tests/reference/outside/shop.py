"""Safety and measuring."""

from __future__ import annotations

import math

import numpy as np
from CoolProp.CoolProp import PropsSI
from fluids.flow_meter import flow_meter_discharge
from scipy.integrate import solve_ivp

from tests.reference.outside import PINT, against

Q = PINT.Quantity


@against("spilled-fuel-vapour", "pint, moles and the molar gas constant")
def _(spilled, evaporated, fuel_density, vapour_weight, lower_limit, temperature, barometer):
    moles = Q(spilled * evaporated * fuel_density, "kg") / Q(vapour_weight, "g/mol")
    vapour = (moles * Q(1, "molar_gas_constant") * Q(temperature, "K") / Q(barometer, "Pa")).to("m^3")
    return {"vapour": vapour.m, "burnable": vapour.m / lower_limit, "heavier_than_air": vapour_weight / 28.9644}


@against(
    "spilled-fuel-vapour",
    "CoolProp, density of pentane vapour, kept thin",
    rel=2e-2,
    vapour_weight=(72.1, 72.2),
    temperature=(25, 50),
    barometer=(60, 65),
)
def _(spilled, evaporated, fuel_density, temperature, barometer):
    thin = barometer / 10  # a tenth of the pressure, so that no vapour condenses, and ten times the volume
    return {"vapour": spilled * evaporated * fuel_density / PropsSI("D", "T", temperature, "P", thin, "Pentane") / 10}


@against(
    "evap-reference-orifice",
    "fluids, flow_meter_discharge (ISO 5167), and a tank emptied in time (scipy)",
    rel=2e-4,
    points=60,
)
def _(diameter, pressure, gas_density, coefficient, space, barometer):
    mass = flow_meter_discharge(
        D=10.0, Do=diameter, P1=barometer + pressure, P2=barometer, rho=gas_density, C=coefficient
    )
    flow = mass / gas_density
    moment = 1e-5 * space * pressure / (barometer * flow)  # a hundred-thousandth of the time it would take
    tank = solve_ivp(
        lambda _time, p: -barometer / space * flow * np.sqrt(p / pressure),
        (0, moment),
        [pressure],
        rtol=1e-12,
        atol=1e-9,
    )
    return {
        "flow": flow,
        "against_reference": (Q(diameter, "m").m_as("in") / 0.02) ** 2,
        "decay": (pressure - tank.y[0, -1]) / moment,
    }


def provable(low: float, high: float, error: float, readability: float) -> np.ndarray:
    """Readings at which every value that may stand behind them lies inside the band, found by trying them."""
    readings = np.linspace(low - error - readability, high + error + readability, 20001)
    off = error + readability / 2
    return readings[(readings - off >= low) & (readings + off <= high)]


@against(
    "gauge-good-enough",
    "numpy, readings tried one by one",
    rel=1e-2,
    floor=1e5,
    span=(20, 100),
    grade=(0.1, 2),
    low=(10, 40),
    high=(60, 90),
    readability=(0, 2),
)
def _(span, grade, readability, low, high):
    found = provable(low, high, span * grade, readability)
    return {
        "window_low": found.min(),
        "window_high": found.max(),
        "window": np.ptp(found),
        "error": span * grade,
        "guard": span * grade + readability / 2,
        "used_up": 1 - np.ptp(found) / (high - low),
    }


@against("verdict-with-gauge-error", "the nearer limit by pint", floor=1e-3)
def _(reading, low, high, error, readability):
    guard = Q(error, "Pa") + Q(readability, "Pa") / 2
    inside = min(Q(reading - low, "Pa"), Q(high - reading, "Pa"))
    return {"guard": guard, "inside": inside, "score": (inside / guard).m_as("")}


@against("difference-one-gauge", "errors set against each other at every corner", floor=1.0)
def _(first, second, repeatability, readability, error):
    each = (-1, 1)
    two = max(abs((a * (error + readability / 2)) - (b * (error + readability / 2))) for a in each for b in each)
    one = max(abs(c * repeatability + (a - b) * readability / 2) for a in each for b in each for c in each)
    return {"difference": math.fsum((first, -second)), "one_gauge": one, "two_gauges": two}
