"""Boost: fluids for the ideal gas and the atmosphere, CoolProp for real air."""

from __future__ import annotations

from CoolProp.CoolProp import PropsSI
from fluids import ATMOSPHERE_1976
from fluids.compressible import isentropic_T_rise_compression, isentropic_work_compression

from tests.reference.outside import PINT, against
from tests.reference.outside.pressure import EARTH

Q = PINT.Quantity
USUAL = {
    "boost": (0, 25),
    "efficiency": (60, 85),
}  # to 25 psi at 60 % or better; hotter air has a greater specific heat


def compressed(inlet: float, start: float, end: float, efficiency: float) -> tuple[float, float]:
    """Temperature in K of real air after a compressor, and the work in J/kg."""
    entropy = PropsSI("S", "T", inlet, "P", start, "Air")
    first = PropsSI("H", "T", inlet, "P", start, "Air")
    work = (PropsSI("H", "P", end, "S", entropy, "Air") - first) / efficiency
    return PropsSI("T", "P", end, "H", first + work, "Air"), work


@against("compressor-outlet-temperature", "fluids, isentropic_T_rise_compression")
def _(inlet, boost, barometer, efficiency):
    outlet = isentropic_T_rise_compression(T1=inlet, P1=barometer, P2=barometer + boost, k=1.4, eta=efficiency)
    return {"ratio": (barometer + boost) / barometer, "outlet": outlet}


@against("compressor-outlet-temperature", "CoolProp, real air, to the hottest corner", rel=3e-2)
@against("compressor-outlet-temperature", "CoolProp, real air, to 25 psi at 60 % or better", rel=1e-2, **USUAL)
def _(inlet, boost, barometer, efficiency):
    return {"outlet": compressed(inlet, barometer, barometer + boost, efficiency)[0]}


@against("pressure-ratio-altitude", "fluids, ATMOSPHERE_1976", rel=2e-6, floor=1e4)
def _(boost, altitude):
    here, sea = ATMOSPHERE_1976(EARTH * altitude / (EARTH - altitude)).P, ATMOSPHERE_1976(0).P
    return {
        "barometer": here,
        "ratio": (here + boost) / here * 1.0,
        "ratio_at_sea_level": (sea + boost) / sea,
        "boost_for_same": sea + boost - here,
        "ratio_for_same": (sea + boost) / here,
    }


@against("vacuum-at-altitude", "fluids, ATMOSPHERE_1976, and the rule of an inch a thousand feet", rel=2e-6, floor=1e4)
def _(sea_level_vacuum, altitude):
    here = ATMOSPHERE_1976(EARTH * altitude / (EARTH - altitude)).P
    manifold = 101325 - sea_level_vacuum
    rule = Q(sea_level_vacuum, "Pa").m_as("inHg") - Q(altitude, "m").m_as("ft") / 1000
    return {
        "barometer": here,
        "manifold": manifold,
        "vacuum_here": here - manifold,
        "by_rule": Q(rule, "inHg").m_as("Pa"),
    }


@against(
    "charge-cooler-effectiveness",
    "CoolProp, heat given off by real air over the heat that could be",
    rel=1e-2,
    floor=1.0,
    hot_in=(60, 200),
    cooled=(50, 200),
)
def _(hot_in, cooled, coolant):
    hot, cold, last = (PropsSI("H", "T", temperature, "P", 2e5, "Air") for temperature in (hot_in, cooled, coolant))
    return {"effectiveness": (hot - cold) / (hot - last), "removed": hot_in - cooled, "left": cooled - coolant}


@against("charge-density-ratio", "CoolProp, real air through compressor and cooler", rel=1e-2, **USUAL)
def _(inlet, boost, barometer, efficiency, cooler, cooler_loss):
    hot, _ = compressed(inlet, barometer, barometer + boost + cooler_loss, efficiency)
    charge = hot - cooler * (hot - inlet)
    gained = PropsSI("D", "T", charge, "P", barometer + boost, "Air") / PropsSI("D", "T", inlet, "P", barometer, "Air")
    return {"hot": hot, "charge": charge, "density_ratio": gained, "pressure_ratio": (barometer + boost) / barometer}


@against("effective-displacement", "CoolProp, real air through compressor and cooler", rel=1e-2, floor=1e-6, **USUAL)
def _(displacement, boost, barometer, inlet, efficiency, cooler):
    hot, _ = compressed(inlet, barometer, barometer + boost, efficiency)
    charge = hot - cooler * (hot - inlet)
    gained = PropsSI("D", "T", charge, "P", barometer + boost, "Air") / PropsSI("D", "T", inlet, "P", barometer, "Air")
    return {"by_rule": displacement * (barometer + boost) / barometer, "by_air": displacement * gained}


@against("supercharger-drive", "fluids, isentropic_work_compression, and CoolProp's density", rel=5e-3, floor=1.0)
def _(engine_speed, crank_pulley, blower_pulley, a_turn, filling, inlet, barometer, boost, efficiency, drive):
    speed = engine_speed / (blower_pulley / crank_pulley)
    mass = speed * a_turn * filling * PropsSI("D", "T", inlet, "P", barometer, "Air")
    molar = isentropic_work_compression(T1=inlet, k=1.4, Z=1.0, P1=barometer, P2=barometer + boost, eta=efficiency)
    return {
        "speed": speed,
        "volume": speed * a_turn * filling,
        "mass": mass,
        "power": mass * molar / 28.9644e-3 / drive,
    }


@against("pressure-ratio-with-filter", "pint, the pressures before and after the compressor", rel=1e-9)
def _(boost, barometer, filter_loss, cooler_loss):
    air, gauge = Q(barometer, "Pa"), Q(boost, "Pa")
    after, before = air + gauge + Q(cooler_loss, "Pa"), air - Q(filter_loss, "Pa")
    return {"ratio": (after / before).m_as(""), "without_losses": ((air + gauge) / air).m_as("")}


@against("vacuum-from-absolute", "pint, the distance to the barometer on either side", rel=1e-9, floor=1e-3)
def _(manifold, barometer):
    over = (Q(manifold, "Pa") - Q(barometer, "Pa")).m
    return {"manifold_vacuum": max(-over, 0.0), "boost": max(over, 0.0)}


@against("air-for-power", "pint, fuel and air in kilograms", rel=1e-9)
def _(power, consumption, ratio):
    fuel = Q(power, "W") * Q(consumption, "kg/J")
    return {"fuel": fuel.m_as("kg/s"), "air": (fuel * ratio).m_as("kg/s")}


@against("power-from-torque", "pint, torque times radians a second", rel=1e-9)
def _(torque, engine_speed):
    return {"power": (Q(torque, "N*m") * Q(engine_speed, "turn/s")).to("N*m*rad/s").m}
