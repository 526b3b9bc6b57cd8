"""Mixture: atoms are counted with molmass, exhaust is made by an exact balance of atoms."""

from __future__ import annotations

import random
from collections.abc import Iterator

import numpy as np
from molmass import Formula
from scipy.optimize import brentq

from tests.reference.outside import against, made, published

# Dry air, U.S. Standard Atmosphere 1976: mole fraction of oxygen and mean molar mass; recalled.
OXYGEN_SHARE, AIR = 0.209476, 28.9644
OXYGEN = Formula("O2").mass
EQUILIBRIUM = 3.5  # of CO + H2O and CO2 + H2, Brettschneider


@against("stoichiometric-ethanol", "molmass, oxygen to burn ethanol", rel=3e-4)
def _(ethanol_share, gasoline_ratio, gasoline_density):
    ethanol = Formula("C2H5OH")
    needs = 3 / OXYGEN_SHARE * AIR / ethanol.mass  # C2H6O + 3 O2 = 2 CO2 + 3 H2O
    parts = np.array([ethanol_share * 789.3, (1 - ethanol_share) * gasoline_density])
    parts /= parts.sum()
    return {"mass_share": parts[0], "ratio": parts @ [needs, gasoline_ratio]}


def exhaust(
    air_ratio: float, hydrogen: float, oxygen: float, monoxide: float, unburnt: float, nitric: float
) -> dict[str, float]:
    """Dry exhaust of the fuel CHyOz at a known lambda, each atom counted: {gas: volume share}.

    `monoxide`: the share of the burnt carbon that ends as CO; `unburnt`: the share of the fuel that leaves as it came;
    `nitric`: moles of NO a mole of fuel carbon. Hydrogen follows from the water-gas equilibrium.
    """
    burnt = 1 - unburnt
    supplied = air_ratio * (1 + hydrogen / 4 - oxygen / 2)  # O2 brought by the air, a mole of fuel carbon
    co, co2 = burnt * monoxide, burnt * (1 - monoxide)
    # H2 / H2O = CO / (K CO2), and both hold the hydrogen of the burnt fuel
    matrix = np.array([[1.0, 1.0], [1.0, -co / (EQUILIBRIUM * co2)]])
    h2, h2o = np.linalg.solve(matrix, [burnt * hydrogen / 2, 0.0])
    free = (2 * supplied + burnt * oxygen - 2 * co2 - co - h2o - nitric) / 2  # O2 left over, by the balance of O
    nitrogen = supplied * (1 - OXYGEN_SHARE) / OXYGEN_SHARE - nitric / 2
    dry = co2 + co + h2 + free + nitric + nitrogen + unburnt / 6
    return {
        "carbon_dioxide": co2 / dry,
        "carbon_monoxide": co / dry,
        "oxygen": free / dry,
        "hydrocarbons": unburnt / 6 / dry,
        "nitric_oxide": nitric / dry,
    }


def monoxide_without_oxygen(air_ratio: float, hydrogen: float, oxygen: float) -> float:
    """The share of carbon that must end as CO so that a rich mixture leaves no oxygen."""
    return brentq(lambda share: exhaust(air_ratio, hydrogen, oxygen, share, 0.0, 0.0)["oxygen"], 0.0, 0.999)


@made("lambda-from-gases", "exhaust made by an exact balance of atoms (numpy), lean", rel=1e-12)
def _() -> Iterator[tuple[dict, dict]]:
    yield from _sampled(lean=True)


@made("lambda-from-gases", "exhaust made by an exact balance of atoms (numpy), rich", rel=1e-12)
def _() -> Iterator[tuple[dict, dict]]:
    yield from _sampled(lean=False)


def _sampled(lean: bool) -> Iterator[tuple[dict, dict]]:
    """Exhaust of known lambda, 0.75 to 0.99 or 1.01 to 1.6, of fuels from methane to ethanol, with unburnt fuel and NO."""
    dice = random.Random(lean)
    for _ in range(500):
        air_ratio = dice.uniform(1.01, 1.6) if lean else dice.uniform(0.75, 0.99)
        hydrogen, oxygen = dice.uniform(1.6, 3.9), dice.uniform(0, 0.5)
        least = 0.0 if lean else monoxide_without_oxygen(air_ratio, hydrogen, oxygen)
        monoxide = min(least + dice.uniform(0.0, 0.05), 0.95)
        gases = exhaust(air_ratio, hydrogen, oxygen, monoxide, dice.uniform(0, 0.02), dice.uniform(0, 0.02))
        yield gases | {"hydrogen_carbon": hydrogen, "oxygen_carbon": oxygen}, {"air_ratio": air_ratio}


@against("stoichiometric-composition", "molmass, atoms counted", rel=1e-4)
def _(hydrogen_carbon, oxygen_carbon):
    fuel = Formula("C").mass + hydrogen_carbon * Formula("H").mass + oxygen_carbon * Formula("O").mass
    molecules = (2 + hydrogen_carbon / 2 - oxygen_carbon) / 2  # O2 for CO2 and H2O
    return {
        "ratio": molecules * OXYGEN / (OXYGEN_SHARE * OXYGEN / AIR) / fuel,
        "carbon_share": Formula("C").mass / fuel,
    }


# Heywood, Internal Combustion Engine Fundamentals (1988), appendix D, stoichiometric ratios; recalled, not open.
published(
    "stoichiometric-composition",
    "Heywood, appendix D",
    rel=1e-3,
    rows=[
        ({"hydrogen_carbon": "4"}, {"ratio": "17.23"}),
        ({"hydrogen_carbon": "2.6666667"}, {"ratio": "15.67"}),
        ({"hydrogen_carbon": "2.25"}, {"ratio": "15.13"}),
        ({"hydrogen_carbon": "1.87"}, {"ratio": "14.6"}),
        ({"hydrogen_carbon": "3", "oxygen_carbon": "0.5"}, {"ratio": "9.00"}),
        ({"hydrogen_carbon": "4", "oxygen_carbon": "1"}, {"ratio": "6.47"}),
    ],
)


@against("lambda-and-ratio", "masses of air and fuel, weighed out")
def _(air_ratio, stoichiometric, gauge_set):
    fuel, needed = 1.0, stoichiometric
    air = air_ratio * needed
    return {
        "true_ratio": air / fuel,
        "equivalence": (fuel / air) / (fuel / needed),
        "shown_ratio": gauge_set * air / needed,
        "fuel_missing": air / needed - fuel,
    }


@against("ethanol-flow-change", "molmass, oxygen to burn a litre", rel=3e-4, floor=0.1)
def _(from_share, to_share, gasoline_ratio, gasoline_density):
    ethanol = Formula("C2H5OH")
    needs = 3 * OXYGEN / (OXYGEN_SHARE * OXYGEN / AIR) / ethanol.mass

    def air(share: float) -> float:
        return float(np.dot([share * 789.3, (1 - share) * gasoline_density], [needs, gasoline_ratio]))

    return {"flow_ratio": air(from_share) / air(to_share), "trim": (air(from_share) - air(to_share)) / air(to_share)}
