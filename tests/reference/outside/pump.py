"""The pump: volume, speed."""

from __future__ import annotations

from tests.reference.outside import PINT, against

Q = PINT.Quantity


@against("pump-volume-test", "pint, default registry")
def _(caught, took, needed):
    flow = (Q(caught, "m^3") / Q(took, "s")).to("L/hour")
    wanted = Q(needed, "m^3/s").to("L/hour")
    return {"flow": flow.m_as("m^3/s"), "a_minute": flow.m_as("m^3/s"), "share": (flow / wanted).m_as(""),
            "allowed": (Q(caught, "m^3") / wanted).m_as("s")}  # fmt: skip


@against("pump-speed-waveform", "pint, revolutions counted as turns")
def _(repeat, bars, humps_a_bar):
    turns = Q(1, "turn") / Q(repeat, "s")
    return {"speed": turns.m_as("turn/s"), "hump_frequency": turns.m_as("turn/s") * bars * humps_a_bar}
