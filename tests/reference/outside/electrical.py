"""Wire, coils, sensors."""

from __future__ import annotations

import math

from fluids.piping import t_from_gauge

from tests.reference.outside import against, published

# Copper Wire Tables (NBS Handbook 100): number, diameter in inches, ohms a 1000 ft at 20 °C; recalled, not open.
AWG = {0: (0.3249, 0.09827), 2: (0.2576, 0.1563), 4: (0.2043, 0.2485), 6: (0.1620, 0.3951), 8: (0.1285, 0.6282),
       10: (0.1019, 0.9989), 12: (0.0808, 1.588), 14: (0.0641, 2.525), 16: (0.0508, 4.016), 18: (0.0403, 6.385),
       20: (0.0320, 10.15), 22: (0.0253, 16.14), 24: (0.0201, 25.67), 26: (0.0159, 40.81), 28: (0.0126, 64.90)}  # fmt: skip
INFERRED_ZERO = 234.5  # °C below which copper's resistance would be none; Copper Wire Tables, recalled


@against("coil-resistance", "Copper Wire Tables, rule of the inferred zero 234.5 °C", rel=5e-4)
def _(at_20, temperature):
    celsius = temperature - 273.15
    return {"resistance": at_20 * (INFERRED_ZERO + celsius) / (INFERRED_ZERO + 20)}


# The tables' third place: a diameter of 0.0126 in is known to 4 in a thousand.
published("wire-drop", "Copper Wire Tables, diameters", rel=4e-3, rows=[
    ({"gauge_number": str(number)}, {"diameter": f"{inches} in"}) for number, (inches, _) in AWG.items()])  # fmt: skip
published("wire-drop", "Copper Wire Tables, ohms a 1000 ft at 20 °C", rel=6e-4, rows=[
    ({"gauge_number": str(number), "temperature": "20 degC"}, {"by_length": f"{ohms} mohm/ft"})
    for number, (_, ohms) in AWG.items()])  # fmt: skip
published("wire-drop", "fluids, t_from_gauge(schedule='AWG')", rel=4e-3, rows=[
    ({"gauge_number": str(number)}, {"diameter": f"{t_from_gauge(number, SI=False, schedule='AWG')} in"})
    for number in range(1, 29)])  # fmt: skip


@against("wire-drop", "resistivity over area, Ohm's law, inferred zero 234.5 °C", rel=5e-4, floor=1e-6)
def _(gauge_number, length, current, temperature):
    diameter = 0.127e-3 * 92 ** ((36 - gauge_number) / 39)
    by_length = 1.7241e-8 / (math.pi / 4 * diameter**2) * (INFERRED_ZERO + temperature - 273.15) / (INFERRED_ZERO + 20)
    return {"by_length": by_length, "wire": by_length * length, "drop": by_length * length * current}
