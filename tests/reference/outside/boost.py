"""Boost: fluids for the ideal gas, CoolProp for real air."""

from __future__ import annotations

import CoolProp.CoolProp as coolprop
from fluids.compressible import isentropic_T_rise_compression

from tests.reference.outside import against


@against("compressor-outlet-temperature", "fluids, isentropic_T_rise_compression")
def _(inlet, boost, barometer, efficiency):
    outlet = isentropic_T_rise_compression(T1=inlet, P1=barometer, P2=barometer + boost, k=1.4, eta=efficiency)
    return {"ratio": (barometer + boost) / barometer, "outlet": outlet}


@against("compressor-outlet-temperature", "CoolProp, real air, to the hottest corner", rel=3e-2)
@against("compressor-outlet-temperature", "CoolProp, real air, to 25 psi at 60 % or better", rel=1e-2, boost=(0, 25), efficiency=(60, 85))
def _(inlet, boost, barometer, efficiency):
    entropy = coolprop.PropsSI("S", "T", inlet, "P", barometer, "Air")
    start = coolprop.PropsSI("H", "T", inlet, "P", barometer, "Air")
    ideal = coolprop.PropsSI("H", "P", barometer + boost, "S", entropy, "Air")
    outlet = coolprop.PropsSI("T", "P", barometer + boost, "H", start + (ideal - start) / efficiency, "Air")
    return {"outlet": outlet}
