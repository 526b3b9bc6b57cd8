"""The marks of an axis."""

from __future__ import annotations

import math
from collections.abc import Sequence


def ticks(low: float, high: float, most: int, inside: bool = False) -> list[float]:
    """Round numbers, at most about `most`: from at or below `low` to at or above `high`, or only those between them."""
    span = (high - low) or abs(high) or 1.0
    rough = span / most
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(m * power for m in (1, 2, 5, 10) if m * power >= rough * (1 - 1e-9))
    if not inside:
        first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
        return [i * step for i in range(first, max(last, first + 1) + 1)]
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return (
        [i * step for i in range(first, last + 1)] if last > first else ticks(low, high, most + 1, inside)
    )  # two marks at least


def number(value: float, all: Sequence[float]) -> str:
    """A mark of an axis with as many decimals as its steps need."""
    return f"{value + 0.0:.{max(0, -math.floor(math.log10(all[1] - all[0]) + 1e-9))}f}"
