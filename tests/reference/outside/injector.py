"""Injectors: flow, time, trim, leaks."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from fluids.core import head_from_P
from fluids.flow_meter import flow_meter_discharge
from scipy.constants import g

from tests.reference.outside import PINT, against, made

Q = PINT.Quantity
# An injector as an orifice of 0.3 mm at the end of a wide bore; what is not the pressure cancels in a ratio.
BORE, HOLE, DENSITY, COEFFICIENT = 8e-3, 0.3e-3, 745.0, 0.62


def mass_flow(across: float) -> float:
    """Mass flow through the injector in kg/s at a pressure in Pa across it, by the equation of ISO 5167."""
    return flow_meter_discharge(D=BORE, Do=HOLE, P1=1e6 + across, P2=1e6, rho=DENSITY, C=COEFFICIENT)


@against("injector-flow-at-pressure", "fluids, flow_meter_discharge (ISO 5167)", rel=1e-9)
def _(rated_flow, rated_pressure, pressure):
    share = mass_flow(pressure) / mass_flow(rated_pressure)
    return {"share": share, "flow": rated_flow * share}


@against("trim-from-pressure", "fluids, flow_meter_discharge (ISO 5167)", rel=1e-9, floor=1e-3)
def _(calibrated, actual):
    return {"trim": mass_flow(calibrated) / mass_flow(actual) - 1}


@against("injector-duty", "the trade's rule: ms x rpm / 1200, / 600 when fired each turn", floor=1e-4)
def _(pulse_width, engine_speed, injections):
    milliseconds, rpm = Q(pulse_width, "s").m_as("ms"), engine_speed * 60
    percent = milliseconds * rpm / 1200 * injections
    return {"duty": percent / 100, "closed": (120 / rpm / injections) - pulse_width}


@against("greatest-credible-pressure", "pint, default registry", floor=1e3)
def _(relief, relief_spread, set_pressure, boost, gauge_top):
    candidates = [Q(relief, "Pa") * (1 + relief_spread), Q(set_pressure + boost, "Pa")]
    greatest = max(candidates)
    return {
        "greatest": greatest,
        "gauge_left": Q(gauge_top, "Pa") - greatest,
        "skin_share": (greatest / Q(100, "psi")).m_as(""),
    }


@against("injector-pulse-width", "pint, units carried through the whole chain")
def _(air, engine_speed, cylinders, injections, air_ratio, stoichiometric, injector_flow, fuel_density, dead_time):
    fuel = Q(air, "kg/s") / (air_ratio * stoichiometric)
    strokes = Q(engine_speed * 60, "1/min") / 2 * cylinders  # intake strokes a minute
    each = (fuel / strokes).to("mg")
    rate = (Q(injector_flow, "m^3/s").to("cc/min") * Q(fuel_density, "kg/m^3").to("g/cc")).to("mg/ms")
    pulse = (each / injections / rate).to("ms") + Q(dead_time, "s")
    return {
        "air_charge": (Q(air, "kg/s") / strokes).to("mg"),
        "fuel_charge": each,
        "pulse": pulse,
        "duty": (pulse * injections * strokes / cylinders).m_as(""),
    }


@against("injector-size", "pint, default registry")
def _(power, consumption, injectors, duty_limit, engine_speed, fuel_density):
    each = (Q(power, "W").to("hp") * Q(consumption, "kg/J").to("lb/hp/hour") / injectors / duty_limit).to("lb/hour")
    return {
        "each": each.m_as("kg/s"),
        "each_volume": (each / Q(fuel_density, "kg/m^3")).m_as("m^3/s"),
        "by_rule": Q(each.m * 10.5, "cc/min").m_as("m^3/s"),
        "closed": (1 - duty_limit) * 120 / (engine_speed * 60),
    }


@made("injector-balance", "numpy, lists of drops with one weak injector among equal ones", rel=1e-9)
def _() -> Iterator[tuple[dict, dict]]:
    dice = np.random.default_rng(3)
    for _ in range(200):
        drops = np.full(dice.integers(2, 13), dice.uniform(2e4, 6e4))
        drops[0] *= dice.uniform(0.05, 0.95)
        needed = drops.max() * len(drops) / drops.sum()  # what all must give in place of what they give
        yield (
            {"sum_of_drops": drops.sum(), "injectors": len(drops), "largest": drops.max(), "smallest": drops.min()},
            {
                "mean": drops.mean(),
                "above_mean": drops.max() / drops.mean() - 1,
                "below_mean": drops.min() / drops.mean() - 1,
                "spread": np.ptp(drops),
                "bank_trim": needed - 1,
            },
        )


@against("leak-jet-speed", "fluids, head_from_P and flow_meter_discharge (ISO 5167)")
def _(pressure, diameter, fuel_density, coefficient):
    speed = (2 * g * head_from_P(P=pressure, rho=fuel_density)) ** 0.5
    mass = flow_meter_discharge(D=10.0, Do=diameter, P1=1e9 + pressure, P2=1e9, rho=fuel_density, C=coefficient)
    return {"speed": speed, "flow": mass / fuel_density}


@against("injector-flow-units", "pint, default registry", floor=1e-4)
def _(mass_flow, volume_flow, fuel_density):
    density = Q(fuel_density, "kg/m^3")
    as_volume, as_mass = (
        (Q(mass_flow, "kg/s") / density).to("cc/min"),
        (Q(volume_flow, "m^3/s") * density).to("lb/hour"),
    )
    pounds = Q(mass_flow, "kg/s").m_as("lb/hour")
    return {
        "as_volume": as_volume.m_as("m^3/s"),
        "as_mass": as_mass.m_as("kg/s"),
        "rule_off": pounds * 10.5 / as_volume.m - 1,
        "rule_as_volume": Q(pounds * 10.5, "cc/min").m_as("m^3/s"),
        "rule_as_mass": Q(Q(volume_flow, "m^3/s").m_as("cc/min") / 10.5, "lb/hour").m_as("kg/s"),
    }


@against("residual-decay", "pint, default registry", floor=1e-6)
def _(start, later, after):
    lost = (Q(start, "Pa") - Q(later, "Pa")).to("psi")
    return {
        "change": -lost,
        "rate": (lost / Q(after, "s").to("min")).m_as("Pa/s"),
        "left": (Q(later, "Pa") / Q(start, "Pa")).m_as(""),
    }


@against("injector-flow-direct", "fluids, flow_meter_discharge (ISO 5167)", rel=1e-9, rail=(600, 5000))
def _(rated_flow, rated_pressure, rail, cylinder):
    flows = [
        flow_meter_discharge(D=0.01, Do=0.0005, P1=p, P2=0.0, rho=745.0, C=0.62)
        for p in (rail - cylinder, rated_pressure)
    ]
    share = flows[0] / flows[1]
    return {"flow": rated_flow * share, "share": share}
