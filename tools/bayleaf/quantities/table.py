"""The closed table of units, and the passage between a unit and SI.

Inside the book every value is in base SI: m, kg, s, K, A. A percentage is a ratio of 1, a turn is 1.
table.json is derived from units.txt by `derive.py`; no factor is typed here.
"""

from __future__ import annotations

import json
from decimal import Decimal
from fractions import Fraction
from functools import cache, lru_cache
from math import isfinite
from pathlib import Path
from typing import Any, NamedTuple

TABLE = Path(__file__).with_name("table.json")


class Unit(NamedTuple):
    """A unit: SI value = value * factor + offset, the offset only for an absolute temperature.

    `dimension` holds the powers of m, kg, s, K, A. `shown` is how a page writes the unit.
    `factor` and `offset` are floats for computing, `exact_factor` and `exact_offset` are exact.
    """

    symbol: str
    dimension: tuple[int, int, int, int, int]
    exact_factor: Fraction
    exact_offset: Fraction
    factor: float
    offset: float
    shown: str


@cache
def units() -> dict[str, Unit]:
    """Every unit of the book by its symbol."""
    table = json.loads(TABLE.read_text(encoding="utf-8"))
    return {symbol: _unit(symbol, entry) for symbol, entry in table.items()}


def _unit(symbol: str, entry: dict[str, Any]) -> Unit:
    factor, offset = Fraction(entry["factor"]), Fraction(entry["offset"])
    dimension = tuple(entry["dimension"])
    return Unit(symbol, dimension, factor, offset, float(factor), float(offset), entry["shown"])


def exact(value: float | Fraction) -> Fraction:
    """A number as it is typed, exactly: 0.1 is one tenth, not the nearest binary fraction."""
    return Fraction(repr(value)) if isinstance(value, float) else Fraction(value)


def to_si_exact(value: float | Fraction, symbol: str, reference: str) -> Fraction:
    """The exact SI value of a number as typed; `reference` as in a quantity."""
    unit = units()[symbol]
    offset = unit.exact_offset if reference == "absolute" else 0
    return exact(value) * unit.exact_factor + offset


@lru_cache(maxsize=100_000)
def to_si(value: float, symbol: str, reference: str) -> float:
    """The float nearest to the SI value of a number as typed, so that 1.1 bar equals 110 kPa.

    The offset of degC and degF counts only when `reference` is "absolute": the reference decides, not the unit.
    """
    if value.__class__ is not int and (value.__class__ is not float or not isfinite(value)):
        return float(to_si_exact(value, symbol, reference))
    unit = units()[symbol]  # the same in whole numbers, five times as fast: one rounding, at the division
    top, bottom = (value, 1) if value.__class__ is int else Decimal(repr(value)).as_integer_ratio()
    top, bottom = top * unit.exact_factor.numerator, bottom * unit.exact_factor.denominator
    if reference == "absolute" and unit.exact_offset:
        top = top * unit.exact_offset.denominator + unit.exact_offset.numerator * bottom
        bottom *= unit.exact_offset.denominator
    return top / bottom


def from_si(x: float, symbol: str, reference: str) -> float:
    """An SI value in a unit, with the same three float operations as the page's script: (x - offset) * q / p."""
    unit = units()[symbol]
    if reference == "absolute":
        x = x - unit.offset
    return x * unit.exact_factor.denominator / unit.exact_factor.numerator
