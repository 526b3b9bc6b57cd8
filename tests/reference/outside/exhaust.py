"""Exhaust: fluids for pipes, molmass for atoms, CoolProp for water."""

from __future__ import annotations

import fluids
from CoolProp.CoolProp import PropsSI
from molmass import Formula
from scipy.optimize import brentq

from tests.reference.outside import PINT, against
from tests.reference.outside.mixture import AIR, OXYGEN_SHARE

Q = PINT.Quantity
GAS = 8.314462618  # J/mol/K, CODATA 2018


def burned(hydrogen: float, air_ratio: float) -> dict[str, float]:
    """Moles of each gas from the fuel CHy, a mole of carbon, in lean or stoichiometric exhaust."""
    oxygen = (1 + hydrogen / 4) * air_ratio
    return {
        "CO2": 1.0,
        "H2O": hydrogen / 2,
        "O2": oxygen - (1 + hydrogen / 4),
        "N2": oxygen * (1 - OXYGEN_SHARE) / OXYGEN_SHARE,
    }


@against(
    "exhaust-flow",
    "molmass, weight of the burned gas of CH1.87 with argon counted as nitrogen's part",
    rel=3e-3,
    ratio=(14.6, 60),
)
def _(air, ratio, temperature, back_pressure, barometer):
    fuel = air / ratio
    gas = burned(1.87, ratio / 14.6)
    moles = sum(gas.values())
    # what air carries beside oxygen has the weight that makes air weigh 28.9644
    rest = (AIR - OXYGEN_SHARE * Formula("O2").mass) / (1 - OXYGEN_SHARE)
    weight = sum(amount * (rest if name == "N2" else Formula(name).mass) for name, amount in gas.items()) / moles
    mass = air + fuel
    return {"mass": mass, "volume": mass / (weight * 1e-3) * GAS * temperature / (barometer + back_pressure)}


@against("exhaust-pipe-drop", "fluids, Haaland's friction factor and one_phase_dP's formula", rel=1e-3)
def _(mass, temperature, diameter, length, roughness, losses, outlet):
    density = outlet / (GAS / 28.9644e-3 * temperature)
    velocity = mass / density / (3.141592653589793 * diameter**2 / 4)
    sutherland = 1.458e-6 * temperature**1.5 / (temperature + 110.4)  # U.S. Standard Atmosphere 1976, equation 51
    reynolds = fluids.Reynolds(V=velocity, D=diameter, rho=density, mu=sutherland)
    factor = fluids.friction_factor(Re=reynolds, eD=roughness / diameter, Method="Haaland")
    drop = fluids.dP_from_K(K=losses + fluids.K_from_f(fd=factor, L=length, D=diameter), rho=density, V=velocity)
    return {"velocity": velocity, "friction": factor, "drop": drop}


@against("exhaust-pipe-drop", "fluids, Colebrook's friction factor", rel=2.5e-2)
def _(mass, temperature, diameter, length, roughness, losses, outlet):
    viscosity = PropsSI("V", "T", temperature, "P", outlet, "Air")
    density = PropsSI("D", "T", temperature, "P", outlet, "Air")
    velocity = mass / density / (3.141592653589793 * diameter**2 / 4)
    reynolds = fluids.Reynolds(V=velocity, D=diameter, rho=density, mu=viscosity)
    return {"friction": fluids.friction_factor(Re=reynolds, eD=roughness / diameter, Method="Colebrook")}


@against(
    "exhaust-pipe-drop",
    "fluids, isothermal_gas, where the drop is small",
    rel=6e-2,
    mass=(15, 60),
    temperature=(50, 400),
    diameter=(50, 90),
    losses=(0, 5),
    outlet=(90, 108),
)
def _(mass, temperature, diameter, length, roughness, losses, outlet):
    density = outlet / (GAS / 28.9644e-3 * temperature)
    viscosity = 1.458e-6 * temperature**1.5 / (temperature + 110.4)
    velocity = mass / density / (3.141592653589793 * diameter**2 / 4)
    reynolds = fluids.Reynolds(V=velocity, D=diameter, rho=density, mu=viscosity)
    factor = fluids.friction_factor(Re=reynolds, eD=roughness / diameter)
    whole = length + losses * diameter / factor  # a pipe long enough to hold the losses too

    def upstream(pressure: float) -> float:
        mean = density * (pressure + outlet) / 2 / outlet
        return fluids.isothermal_gas(rho=mean, fd=factor, P1=pressure, P2=outlet, L=whole, D=diameter) - mass

    return {"drop": brentq(upstream, outlet * (1 + 1e-7), 1.5 * outlet) - outlet}


@against("back-pressure-cost", "pint, mean effective pressure", floor=1e-6)
def _(back_pressure, displacement, engine_speed, power):
    work = (Q(back_pressure, "Pa") * Q(displacement, "m^3")).to("J")  # one cycle
    lost = (work * Q(engine_speed, "1/s") / 2).to("W")
    return {
        "power_lost": lost.m,
        "share": lost.m / power,
        "torque_lost": lost.m / (2 * 3.141592653589793 * engine_speed),
    }


@against("converter-efficiency", "moles of each gas, a mole of carbon, before and behind", rel=1e-9, floor=0.1)
def _(
    carbon_dioxide_in,
    carbon_dioxide_out,
    carbon_monoxide_in,
    carbon_monoxide_out,
    hydrocarbons_in,
    hydrocarbons_out,
    nitric_oxide_in,
    nitric_oxide_out,
):
    before, behind = carbon_dioxide_in + carbon_monoxide_in, carbon_dioxide_out + carbon_monoxide_out
    pairs = {
        "monoxide": (carbon_monoxide_in, carbon_monoxide_out),
        "hydrocarbon": (hydrocarbons_in, hydrocarbons_out),
        "nitric": (nitric_oxide_in, nitric_oxide_out),
    }
    found = {name: (one / before - other / behind) / (one / before) for name, (one, other) in pairs.items()}
    return found | {"dilution": before / behind}


@against("water-from-a-litre", "molmass, atoms counted", rel=1e-4)
def _(fuel, fuel_density, hydrogen_carbon, oxygen_carbon):
    moles = (
        fuel
        * fuel_density
        / (Formula("C").mass + hydrogen_carbon * Formula("H").mass + oxygen_carbon * Formula("O").mass)
    )
    water = moles * hydrogen_carbon / 2 * Formula("H2O").mass
    return {
        "carbon_dioxide": moles * Formula("CO2").mass,
        "water": water,
        "water_volume": water / PropsSI("D", "T", 293.15, "P", 101325, "Water"),
    }


@against("exhaust-dew-point", "CoolProp, water at saturation (IAPWS-95)", rel=3e-4)
def _(hydrogen_carbon, air_ratio, barometer):
    gas = burned(hydrogen_carbon, air_ratio)
    share = gas["H2O"] / sum(gas.values())
    return {"water_share": share, "dew_point": PropsSI("T", "P", share * barometer, "Q", 1, "Water")}
