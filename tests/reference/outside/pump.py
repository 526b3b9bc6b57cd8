"""The pump: volume, speed, power, motor. The motor is integrated in time until it settles, not solved."""

from __future__ import annotations

import math

from scipy.integrate import solve_ivp

from tests.reference.outside import PINT, against

Q = PINT.Quantity


@against("pump-volume-test", "pint, default registry")
def _(caught, took, needed):
    flow = (Q(caught, "m^3") / Q(took, "s")).to("L/hour")
    wanted = Q(needed, "m^3/s").to("L/hour")
    return {
        "flow": flow.m_as("m^3/s"),
        "a_minute": flow.m_as("m^3/s"),
        "share": (flow / wanted).m_as(""),
        "allowed": (Q(caught, "m^3") / wanted).m_as("s"),
    }


@against("pump-speed-waveform", "pint, revolutions counted as turns")
def _(repeat, bars, humps_a_bar):
    turns = Q(1, "turn") / Q(repeat, "s")
    return {"speed": turns.m_as("turn/s"), "hump_frequency": turns.m_as("turn/s") * bars * humps_a_bar}


@against("fuel-flow-for-power", "pint, default registry")
def _(power, consumption, fuel_density, margin):
    burned = Q(power, "W").to("hp") * Q(consumption, "kg/J").to("lb/hp/hour")
    volume = (burned / Q(fuel_density, "kg/m^3")).to("gallon/hour")
    by_rule = Q(Q(power, "W").m_as("hp") * 0.5 / 6, "gallon/hour")
    return {
        "burned": burned.m_as("kg/s"),
        "volume": volume.m_as("m^3/s"),
        "by_rule": by_rule.m_as("m^3/s"),
        "with_margin": volume.m_as("m^3/s") * (1 + margin),
    }


@against("pump-hydraulic-power", "pint and the hydraulic rule L/min x bar / 600 = kW")
def _(flow, pressure, efficiency, voltage):
    watts = Q(flow, "m^3/s").m_as("L/min") * Q(pressure, "Pa").m_as("bar") / 600 * 1000
    return {"hydraulic": watts, "electrical": watts / efficiency, "current": watts / efficiency / voltage}


def settled(voltage: float, winding: float, friction: float, load: float, constant: float) -> tuple[float, float]:
    """Current in A and speed in rad/s of a brushed motor at rest that is switched on, after it has settled."""
    inductance, inertia = 1e-3, 1e-6

    def motor(_time, state):
        current, speed = state
        return (
            (voltage - winding * current - constant * speed) / inductance,
            (constant * current - friction - load) / inertia,
        )

    answer = solve_ivp(
        motor,
        (0, 20 * winding * inertia / constant**2 + 40 * inductance / winding),
        (0.0, 0.0),
        "LSODA",
        rtol=1e-10,
        atol=1e-10,
    )
    return answer.y[0, -1], answer.y[1, -1]


@against(
    "pump-current-expected",
    "scipy, a brushed motor integrated until it settles",
    rel=1e-6,
    points=25,
    voltage=(9, 16),
    pressure=(0, 100),
    known_current=(1, 9),
)
def _(known_current, known_pressure, known_voltage, idle_share, winding, pressure, voltage):
    constant = 0.02  # N·m/A, cancels
    friction = constant * known_current * idle_share
    load = constant * known_current * (1 - idle_share) / known_pressure  # N·m/Pa
    _, known_speed = settled(known_voltage, winding, friction, load * known_pressure, constant)
    current, speed = settled(voltage, winding, friction, load * pressure, constant)
    return {
        "current": current,
        "speed_share": speed / known_speed,
        "by_constant_power": known_current * known_voltage / voltage,
    }


@against("pump-demand-duty", "two exponentials of a chopped coil at 20 kHz, 2 mH", rel=2e-3)
def _(supply, duty, motor_current, winding):
    period, tau = 1 / 20e3, 2e-3 / winding
    emf = duty * supply - motor_current * winding  # what the turning motor makes when its mean current is this
    on, off = (supply - emf) / winding, -emf / winding  # where the current tends while the switch is closed, and open
    grown, shrunk = math.exp(-duty * period / tau), math.exp(-(1 - duty) * period / tau)
    lowest = (on * (1 - grown) * shrunk + off * (1 - shrunk)) / (1 - grown * shrunk)  # the same after a period
    charge = on * duty * period + (lowest - on) * tau * (1 - grown)  # through the feed wire, one period
    full = supply - motor_current * winding
    return {"motor_voltage": duty * supply, "feed_current": charge / period, "speed_share": max(emf / full, 0)}


@against(
    "voltage-drop-pump",
    "a displacement pump with a leak, turned by the settled motor (scipy)",
    rel=1e-6,
    points=25,
    feed_drop=(0, 2),
    ground_drop=(0, 1),
    current=(1, 8),
    slip=(0, 60),
)
def _(battery, feed_drop, ground_drop, current, winding, slip):
    constant, a_turn = 0.02, 1e-7  # N·m/A and m³/rad, both cancel
    _, full = settled(battery, winding, constant * current, 0.0, constant)
    _, now = settled(battery - feed_drop - ground_drop, winding, constant * current, 0.0, constant)
    leak = slip / (1 + slip) * a_turn * full
    delivered = max(a_turn * now - leak, 0) / (a_turn * full - leak)
    drop = Q(feed_drop + ground_drop, "V")
    return {
        "at_pump": battery - drop.m,
        "speed_share": now / full,
        "flow_share": delivered,
        "bad_place": (drop / Q(current, "A")).m_as("ohm"),
        "heat": (drop * Q(current, "A")).m_as("W"),
    }


@against("pump-speed-from-humps", "pint, revolutions counted as turns")
def _(hump_frequency, bars, humps_a_bar):
    humps_a_turn = Q(bars * humps_a_bar, "1/turn")
    return {"speed": (Q(hump_frequency, "1/s") / humps_a_turn).m_as("turn/s")}
