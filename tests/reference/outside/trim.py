"""Trim: the closed loop is found by a root finder, a leak by real air through a nozzle."""

from __future__ import annotations

import math

from CoolProp.CoolProp import PropsSI
from scipy.optimize import brentq, minimize_scalar

from tests.reference.outside import against

STOICHIOMETRIC = 14.1  # cancels


def closed_loop(air: float, metered: float, injector_share: float = 1.0) -> float:
    """The trim at which an engine that takes in `air` and computes its fuel from `metered` stands at lambda one."""

    def off(trim: float) -> float:
        fuel = metered / STOICHIOMETRIC * (1 + trim) * injector_share
        return air / fuel / STOICHIOMETRIC - 1

    return brentq(off, -0.99, 50, xtol=1e-15, rtol=1e-14)


def flux(pressure: float, temperature: float, throat: float) -> float:
    """Mass flux in kg/s/m² of real air from rest at a pressure and a temperature to a throat pressure, without loss."""
    entropy = PropsSI("S", "T", temperature, "P", pressure, "Air")
    drop = PropsSI("H", "T", temperature, "P", pressure, "Air") - PropsSI("H", "P", throat, "S", entropy, "Air")
    return PropsSI("D", "P", throat, "S", entropy, "Air") * math.sqrt(2 * max(drop, 0.0))


@against(
    "trim-from-leak",
    "CoolProp, real air through a nozzle, greatest flux (scipy)",
    rel=5e-3,
    points=60,
    manifold_vacuum=(0.1, 25),
)
def _(metered, diameter, coefficient, manifold_vacuum, barometer, temperature):
    manifold = max(barometer - manifold_vacuum, 0.3 * barometer)  # choked long before
    found = minimize_scalar(
        lambda throat: -flux(barometer, temperature, throat), bounds=(manifold, barometer), method="bounded"
    )
    greatest = max(-found.fun, flux(barometer, temperature, manifold))
    leak = coefficient * math.pi * diameter**2 / 4 * greatest
    return {"leak": leak, "trim": closed_loop(metered + leak, metered)}


@against("trim-from-meter", "the closed loop found by scipy", floor=1e-3)
def _(air, meter_error, missed):
    metered = (air - missed) * (1 + meter_error)
    return {"trim": closed_loop(air, metered), "alone": closed_loop(air, air * (1 + meter_error)), "metered": metered}


@against("trim-of-causes", "the closed loop found by scipy", floor=1e-3)
def _(from_pressure, from_leak, from_meter):
    seen = 10.0  # g/s that pass the meter, cancels
    reading, injectors = seen / (1 + from_meter), 1 / (1 + from_pressure)
    return {
        "together": closed_loop(seen * (1 + from_leak), reading, injectors),
        "without_leak": closed_loop(seen, reading, injectors),
    }


@against("trim-product", "the closed loop found by scipy, the long trim learned and the short one on top", floor=1e-3)
def _(short, long):
    learned = 1 + long
    lacking = 1 / (learned * (1 + short))  # the injectors' share at which both trims together are right
    return {"total": closed_loop(1.0, 1.0, lacking), "sum": math.fsum((short, long))}
