"""Calculators and inputs for tests: the same ones every time."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import islice, product
from pathlib import Path

from bayleaf.formulas.calculator.compile import compile_calculator
from bayleaf.formulas.calculator.model import Calculator
from bayleaf.quantities import quantity
from bayleaf.records import load

ROOT = Path(__file__).parents[2]
QUANTITIES = {id: quantity(id, record.data) for id, record in load(ROOT).of("quantities").items()}

PRACTICE = {"practice": True}


def samples(calc: Calculator, count: int, seed: int = 1) -> Iterator[list[float]]:
    """`count` lists of inputs in SI, in the calculator's order: the corners of its ranges first, then anywhere inside."""
    chance = random.Random(seed)
    corners = list(islice(product(*((one.low, one.high) for one in calc.inputs.values())), count // 2))
    yield from map(list, corners)
    for _ in range(count - len(corners)):
        yield [chance.uniform(one.low, one.high) for one in calc.inputs.values()]


def record(inputs: dict, formula: dict, result: dict, constants: dict | None = None, **more) -> dict:
    """A calculator's record; an input is (quantity, unit, default, min, max), a constant (quantity, unit, value)."""
    keys = ("quantity", "unit", "default", "min", "max")
    return {
        "title": "A calculator",
        "inputs": {name: dict(zip(keys, entry)) for name, entry in inputs.items()},
        "constants": {
            n: {"quantity": q, "unit": u, "value": v, "basis": PRACTICE} for n, (q, u, v) in (constants or {}).items()
        },
        "formula": formula,
        "result": {name: dict(zip(("quantity", "unit", "digits"), entry)) for name, entry in result.items()},
        "checks": [],
        **more,
    }


BOOST = ("boost-pressure", "psi", 10, 0, 45)
BAROMETER = ("barometric-pressure", "kPa", 101.3, 60, 108)

REGULATOR = record(
    {"set_pressure": ("rail-pressure", "psi", 43.5, 20, 70), "vacuum_read": ("manifold-vacuum", "inHg", 18, 0, 25)},
    {"gauge_reading": "set_pressure + above_ambient(gauge(vacuum_read))"},
    {"gauge_reading": ("rail-pressure", "psi", 3)},
)
COMPRESSOR = record(
    {
        "inlet": ("air-temperature", "degC", 25, -40, 60),
        "boost": BOOST,
        "barometer": BAROMETER,
        "efficiency": ("efficiency", "%", 70, 40, 85),
    },
    {
        "ratio": "absolute(boost, barometer) / barometer",
        "outlet": "inlet * (1 + (ratio ** ((gamma - 1) / gamma) - 1) / efficiency)",
    },
    {"outlet": ("air-temperature", "degC", 3), "ratio": ("pressure-ratio", "1", 3)},
    {"gamma": ("ratio-of-specific-heats", "1", 1.4)},
    table={"rows": {"boost": [5, 10, 15, 20, 25]}, "columns": {"efficiency": [60, 70, 80]}, "result": "outlet"},
    chart={"x": "boost", "lines": "efficiency", "result": "outlet"},
)
FLOW = record(
    {
        "rated": ("injector-volume-flow", "cc/min", 240, 50, 2000),
        "rated_at": ("pressure-across-injector", "psi", 43.5, 30, 60),
        "actual": ("pressure-across-injector", "psi", 36, 5, 100),
    },
    {"flow": "rated * sqrt(actual / rated_at)"},
    {"flow": ("injector-volume-flow", "cc/min", 3)},
)
# Every operation, over ranges that reach what is undefined.
HOSTILE = record(
    {"x": ("ratio", "1", 1, -5, 5), "y": ("ratio", "1", 1, -5, 5), "z": ("ratio", "1", 2, -800, 800)},
    {
        "a": "x ** y - x ** -2 / (y - x)",
        "b": "exp(z) + log(x) * sqrt(y)",
        "c": "if(x < y, min(x, y, 0), max(a, b)) + abs(-x)",
        "d": "if(x >= 0, x ** (1 / 2), -x ** 3) * pi + a * 0",
        "e": "if(y > 0, if(z <= 0, 1, z), 0 / x)",
        "f": "(z * z * z) ** 8 * (z ** 8) ** 8",
    },
    dict.fromkeys("abcdef", ("ratio", "1", 3)),
)
ALL = {"regulator": REGULATOR, "compressor": COMPRESSOR, "flow": FLOW, "hostile": HOSTILE}


def calculator(data: dict) -> Calculator:
    """A record compiled with the quantities of the book."""
    return compile_calculator(data, QUANTITIES)
