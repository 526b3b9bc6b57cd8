"""A small steady model of a port-injection system with a return line, to confirm the direction of what faults show.

Only textbook relations: a permanent-magnet motor (V = I R + k ω, torque k I), a pump with slip (Q = D ω − s Δp) and a
relief valve, laminar and turbulent losses, a spring regulator that follows the manifold, injectors by the orifice law,
choking at the inlet when the suction side would fall below the vapour pressure, and an exponential decay after the stop.
The numbers are round ones for a car of 65 L/h at full load; they are not of any car and stand for no figure of the book.

SI throughout: Pa (gauge unless said), m³/s, V, A, Ω, rad/s, N·m.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from scipy.optimize import brentq

LITRE_PER_HOUR = 1e-3 / 3600
ATMOSPHERE = 101.325e3
IDLE_VACUUM = 61e3  # 18 inHg


@dataclass(frozen=True)
class Port:
    """A healthy system; a fault is a copy with other values."""

    running_volts: float = 14.0
    resting_volts: float = 12.6
    feed_ohm: float = 0.03
    ground_ohm: float = 0.03
    relay_closes: bool = True
    turns: bool = True
    winding_ohm: float = 0.5
    motor_constant: float = 0.0167
    friction: float = 0.056
    hydraulic_efficiency: float = 0.5
    displacement: float = 150 * LITRE_PER_HOUR / 628
    slip: float = 40 * LITRE_PER_HOUR / 330e3
    relief: float = 650e3
    fuel_over_strainer: bool = True
    strainer: float = 1.1e12  # Pa/(m³/s)²
    vapour_pressure: float = 55e3  # absolute
    line: float = 5.5e12  # Pa/(m³/s)²
    filter: float = 2.7e8  # Pa/(m³/s), laminar: 8 kPa at the flow of a healthy pump
    set_pressure: float = 300e3
    regulator_gain: float = 2e-9  # m³/s for each Pa above the set pressure
    valve: float = 2.2e13  # the regulator wide open, Pa/(m³/s)²
    screen: float = 0.0
    hangs_open: bool = False
    reference: float = 1.0  # share of the manifold vacuum that reaches the diaphragm
    return_line: float = 1.1e13
    idle_flow: float = 1.6 * LITRE_PER_HOUR
    load_flow: float = 65 * LITRE_PER_HOUR
    diaphragm_leak: float = 0.0  # m³/s for each Pa
    check_valve_leak: float = 0.0
    seat_leak: float = 0.0
    injector_leak: float = 0.0
    compliance: float = 2e-11  # m³ for each Pa: hoses, a trace of vapour


@dataclass(frozen=True)
class Steady:
    """One running point."""

    rail: float
    flow: float
    returned: float
    current: float
    filter_drop: float
    supply_drop: float
    ground_drop: float
    pump_volts: float


def running(
    port: Port,
    volts: float,
    manifold: float,
    reference: float,
    injectors: float,
    car_return: bool = True,
    jumper: bool = False,
) -> Steady:
    """The running point: the rail pressure at which as much arrives as leaves.

    `manifold` and `reference` are the gauge pressures at the tips and at the diaphragm (below zero for vacuum),
    `injectors` the flow of the injectors at the set pressure across them.
    """
    powered = port.relay_closes or jumper
    choked = math.sqrt((ATMOSPHERE - port.vapour_pressure) / port.strainer) if port.fuel_over_strainer else 0.0

    def motor(rise: float, fill: float) -> tuple[float, float]:
        """(current, speed) against a pressure rise; `fill` is the share of liquid in the pump."""
        if not (powered and port.turns):
            return 0.0, 0.0
        torque = port.friction + fill * port.displacement * max(rise, 0.0) / port.hydraulic_efficiency
        current = torque / port.motor_constant
        speed = (volts - current * (port.winding_ohm + port.feed_ohm + port.ground_ohm)) / port.motor_constant
        return current, max(speed, 0.0)

    def rise_at(flow: float, rail: float) -> float:
        return rail + (port.strainer + port.line) * flow**2 + port.filter * flow

    def wanted(flow: float, rail: float) -> float:
        """What the pump would deliver against this, less the flow: zero at the flow that it does deliver."""
        rise = rise_at(flow, rail)
        relieved = 1e-9 * max(rise - port.relief, 0.0)
        return port.displacement * motor(rise, 1.0)[1] - port.slip * rise - relieved - flow

    def unchoked(rail: float) -> float:
        most = port.displacement * volts / port.motor_constant
        return brentq(wanted, 0.0, most, args=(rail,), xtol=1e-13) if wanted(0.0, rail) > 0 else 0.0

    def leaving(rail: float) -> float:
        across = max(rail - manifold, 0.0) if rail > 0 else 0.0
        leak = port.diaphragm_leak * (rail - reference) if rail > 0 else 0.0
        return injectors * math.sqrt(across / port.set_pressure) + leak + returned(port, rail, reference, car_return)

    def surplus(rail: float) -> float:
        return min(unchoked(rail), choked) - leaving(rail)

    rail = brentq(surplus, 0.0, 5e6, xtol=1.0) if surplus(0.0) > 0 else 0.0
    free = unchoked(rail)
    flow = min(free, choked)
    current, _speed = motor(rise_at(flow, rail), flow / free if free > 0 and flow < free else 1.0)
    supply = current * port.feed_ohm if powered else volts
    ground = current * port.ground_ohm
    back = returned(port, rail, reference, car_return)
    return Steady(rail, flow, back, current, port.filter * flow, supply, ground, volts - supply - ground)


def returned(port: Port, rail: float, reference: float, car_return: bool) -> float:
    """What the regulator lets back at this rail pressure."""

    def holds(flow: float) -> float:
        line = port.valve + (port.return_line if car_return else 0.0)
        governed = (
            0.0 if port.hangs_open else port.set_pressure + reference * port.reference + flow / port.regulator_gain
        )
        return max(governed, line * flow**2) + port.screen * flow**2

    return brentq(lambda flow: holds(flow) - rail, 0.0, 1e-2, xtol=1e-14) if rail > holds(0.0) else 0.0


def readings(port: Port) -> dict[str, float]:
    """What the book's readings show, by the ids of the book, in SI."""
    tips_idle, tips_load = -IDLE_VACUUM, -3e3
    primed = running(port, port.resting_volts, 0.0, 0.0, 0.0)
    idle = running(port, port.running_volts, tips_idle, tips_idle, port.idle_flow)
    hose_off = running(port, port.running_volts, tips_idle, 0.0, port.idle_flow)
    load = running(port, port.running_volts, tips_load, tips_load, port.load_flow)
    container = running(port, port.resting_volts, 0.0, 0.0, 0.0, car_return=False, jumper=True)
    leaks = port.check_valve_leak + port.seat_leak + port.injector_leak + port.diaphragm_leak
    return {
        "rail-pressure-primed": primed.rail,
        "rail-pressure-idle": idle.rail,
        "rail-pressure-hose-off": hose_off.rail,
        "rail-pressure-rise": hose_off.rail - idle.rail,
        "rail-pressure-load": load.rail,
        "delivered-volume": container.returned * 15,
        "rail-pressure-return-free": container.rail,
        "filter-drop": idle.filter_drop,
        "pump-current-idle": idle.current,
        "pump-terminal-voltage": primed.pump_volts,
        "pump-supply-drop": idle.supply_drop,
        "pump-ground-drop": idle.ground_drop,
        "residual-pressure": 0.0 if port.hangs_open else idle.rail * math.exp(-300 * leaks / port.compliance),
        "vacuum-at-regulator": IDLE_VACUUM * port.reference,
    }
