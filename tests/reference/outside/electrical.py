"""Wire, coils, sensors."""

from __future__ import annotations

import math

import numpy as np
from fluids.piping import t_from_gauge
from scipy.optimize import brentq
from scipy.signal import lti, step

from tests.reference.outside import PINT, against, published

Q = PINT.Quantity

# Copper Wire Tables (NBS Handbook 100): number, diameter in inches, ohms a 1000 ft at 20 °C; recalled, not open.
AWG = {
    0: (0.3249, 0.09827),
    2: (0.2576, 0.1563),
    4: (0.2043, 0.2485),
    6: (0.1620, 0.3951),
    8: (0.1285, 0.6282),
    10: (0.1019, 0.9989),
    12: (0.0808, 1.588),
    14: (0.0641, 2.525),
    16: (0.0508, 4.016),
    18: (0.0403, 6.385),
    20: (0.0320, 10.15),
    22: (0.0253, 16.14),
    24: (0.0201, 25.67),
    26: (0.0159, 40.81),
    28: (0.0126, 64.90),
}
INFERRED_ZERO = 234.5  # °C below which copper's resistance would be none; Copper Wire Tables, recalled


@against("coil-resistance", "Copper Wire Tables, rule of the inferred zero 234.5 °C", rel=5e-4)
def _(at_20, temperature):
    celsius = temperature - 273.15
    return {"resistance": at_20 * (INFERRED_ZERO + celsius) / (INFERRED_ZERO + 20)}


# The tables' third place: a diameter of 0.0126 in is known to 4 in a thousand.
published(
    "wire-drop",
    "Copper Wire Tables, diameters",
    rel=4e-3,
    rows=[({"gauge_number": str(number)}, {"diameter": f"{inches} in"}) for number, (inches, _) in AWG.items()],
)
published(
    "wire-drop",
    "Copper Wire Tables, ohms a 1000 ft at 20 °C",
    rel=6e-4,
    rows=[
        ({"gauge_number": str(number), "temperature": "20 degC"}, {"by_length": f"{ohms} mohm/ft"})
        for number, (_, ohms) in AWG.items()
    ],
)
published(
    "wire-drop",
    "fluids, t_from_gauge(schedule='AWG')",
    rel=4e-3,
    rows=[
        ({"gauge_number": str(number)}, {"diameter": f"{t_from_gauge(number, SI=False, schedule='AWG')} in"})
        for number in range(1, 29)
    ],
)


@against("wire-drop", "resistivity over area, Ohm's law, inferred zero 234.5 °C", rel=5e-4, floor=1e-6)
def _(gauge_number, length, current, temperature):
    diameter = 0.127e-3 * 92 ** ((36 - gauge_number) / 39)
    by_length = 1.7241e-8 / (math.pi / 4 * diameter**2) * (INFERRED_ZERO + temperature - 273.15) / (INFERRED_ZERO + 20)
    return {"by_length": by_length, "wire": by_length * length, "drop": by_length * length * current}


@against("connection-resistance", "pint, default registry")
def _(drop, current, other_current):
    resistance = Q(drop, "V") / Q(current, "A")
    other = resistance * Q(other_current, "A")
    return {
        "resistance": resistance.to("milliohm"),
        "heat": Q(drop, "V") * Q(current, "A"),
        "other_drop": other,
        "other_heat": other * Q(other_current, "A"),
    }


@against("coil-current-rise", "scipy.signal, step response of 1 / (L s + R)", rel=1e-6, points=50)
def _(voltage, resistance, inductance, elapsed, share):
    coil = lti([1.0], [inductance, resistance])

    def at(moment: float) -> float:
        return voltage * step(coil, T=np.array([0.0, moment]))[1][-1]

    final, tau = voltage / resistance, inductance / resistance
    reached = brentq(lambda moment: at(moment) - share * final, 1e-9 * tau, 20 * tau, rtol=1e-12)
    return {"final": final, "time_constant": tau, "current": at(elapsed) if elapsed else 0.0, "reached_after": reached}


@against("temperature-sensor-resistance", "definition of B turned round, ln(R1/R2) / (1/T1 - 1/T2), solved with scipy")
def _(at_25, material, temperature, pull_up, reference):
    if temperature == 298.15:
        ohms = at_25
    else:
        spread = 1 / temperature - 1 / 298.15
        ohms = at_25 * math.exp(brentq(lambda log: log / spread - material, -20, 20, xtol=1e-15, rtol=1e-15))
    return {"resistance": ohms, "signal": reference * ohms / (ohms + pull_up)}


# A common thermistor of 10 kilohms with B 25/85 of 3435 K; its printed table, recalled.
KILOHMS = {
    0: 27.28,
    10: 17.96,
    25: 10.0,
    40: 5.827,
    50: 4.160,
    60: 3.020,
    80: 1.668,
    90: 1.266,
    100: 0.9731,
    110: 0.7576,
}
published(
    "temperature-sensor-resistance",
    "printed table of a 10 kΩ thermistor, 0 to 110 °C",
    rel=6e-2,
    rows=[
        (
            {"at_25": "10 kohm", "material": "3435 K", "temperature": f"{degrees} degC"},
            {"resistance": f"{kilohms} kohm"},
        )
        for degrees, kilohms in KILOHMS.items()
    ],
)
