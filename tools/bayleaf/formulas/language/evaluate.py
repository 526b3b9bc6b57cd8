"""The Python side of the arithmetic. Same answers as `javascript.py`, bit for bit but for pow, exp and log."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any, cast

NAN = math.nan


def divide(a: float, b: float) -> float:
    """A quotient; by 0 it is undefined."""
    return NAN if b == 0 else a / b


def power(a: float, b: float) -> float:
    """A power; undefined where it is not a finite real number."""
    if not (math.isfinite(a) and math.isfinite(b)):
        return NAN
    try:
        return math.pow(a, b)
    except (ValueError, OverflowError):  # a negative base under a broken exponent, 0 to a negative, too large
        return NAN


def root(a: float) -> float:
    """A square root; of a negative it is undefined."""
    return math.sqrt(a) if a >= 0 else NAN


def exponential(a: float) -> float:
    """The number e to a power; undefined where it overflows."""
    try:
        return math.exp(a) if math.isfinite(a) else NAN
    except OverflowError:
        return NAN


def logarithm(a: float) -> float:
    """A natural logarithm; of 0 or a negative it is undefined."""
    return math.log(a) if a > 0 and math.isfinite(a) else NAN


def least(a: float, b: float) -> float:
    """The lesser of two; undefined where one of them is."""
    return NAN if a != a or b != b else min(b, a)


def most(a: float, b: float) -> float:
    """The greater of two; undefined where one of them is."""
    return NAN if a != a or b != b else max(b, a)


def size(a: float) -> float:
    """A number without its sign."""
    return abs(a)


def below(a: float, b: float) -> float:
    """1 where a < b, else 0; undefined where one of them is."""
    return NAN if a != a or b != b else float(a < b)


def at_most(a: float, b: float) -> float:
    """1 where a <= b, else 0; undefined where one of them is."""
    return NAN if a != a or b != b else float(a <= b)


def choose(test: float, one: float, other: float) -> float:
    """`one` where the test is 1, `other` where it is 0; the side not chosen may be undefined."""
    return NAN if test != test else one if test else other


def keep(a: float) -> float:
    """A line's value: what has overflowed is undefined."""
    return a if a - a == 0 else NAN


OPERATIONS: dict[str, Callable[..., float]] = {
    function.__name__: function
    for function in (divide, power, root, exponential, logarithm, least, most, size, below, at_most, choose, keep)
}


def compiled(assignments: list[str]) -> Callable[[list[float]], None]:
    """A function that fills the lines of its list in place. Only for text that `emit.body` wrote."""
    space: dict[str, Any] = {"__builtins__": {}, **OPERATIONS}
    # The text is our own: emit writes it from a parsed tree, with numbers, places in v and the names above.
    exec("def run(v):\n    " + "\n    ".join(assignments), space)  # noqa: S102
    return cast(Callable[[list[float]], None], space["run"])
