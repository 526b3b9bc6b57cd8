"""Injectors: flow, time, trim."""

from __future__ import annotations

from fluids.flow_meter import flow_meter_discharge

from tests.reference.outside import PINT, against

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
