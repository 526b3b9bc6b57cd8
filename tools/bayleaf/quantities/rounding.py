"""Rounding as a page shows numbers. Halves go away from zero on the exact decimal, as JavaScript's toPrecision does.

Limits round inward, so that nothing outside the limit as written is ever shown as inside.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from typing import overload

Number = int | float | Decimal | Fraction

# Enough for any double written out in full, so that no digit is lost before the one rounding.
_WIDE = Context(prec=1100, Emax=999999, Emin=-999999)


def round_half_away(x: Number, decimals: int) -> Decimal:
    """`x` to a number of decimals (negative: tens, hundreds). A float counts as the exact binary value it holds."""
    return _quantize(x, -decimals, ROUND_HALF_UP)


def significant(x: Number, digits: int) -> str:
    """`x` with that many significant digits, written without an exponent: 298.6 to 2 digits is "300".

    Raises ValueError when `x` is not finite.
    """
    if not math.isfinite(x):
        raise ValueError(f"{x} has no digits")
    return plain(_to_digits(x, digits, ROUND_HALF_UP))


@overload
def round_inward(low: Number, high: Number, digits: int) -> tuple[Decimal, Decimal]: ...


@overload
def round_inward(low: Number | None, high: Number | None, digits: int) -> tuple[Decimal | None, Decimal | None]: ...


def round_inward(low: Number | None, high: Number | None, digits: int) -> tuple[Decimal | None, Decimal | None]:
    """Limits with that many significant digits, never wider than given: the low one up, the high one down.

    None stands for a side without a limit. A band too narrow for the digits gets more of them.
    """
    if low is None or high is None:
        return (
            None if low is None else _to_digits(low, digits, ROUND_CEILING),
            None if high is None else _to_digits(high, digits, ROUND_FLOOR),
        )
    while True:
        lower, upper = _to_digits(low, digits, ROUND_CEILING), _to_digits(high, digits, ROUND_FLOOR)
        if lower < upper or low >= high or digits > 30:
            return lower, upper
        digits += 1


def plain(number: Decimal) -> str:
    """A decimal without an exponent and without a negative zero."""
    text = format(number, "f")
    return text.lstrip("-") if not number else text


def _to_digits(x: Number, digits: int, mode: str) -> Decimal:
    if not x:
        return Decimal(0)
    exponent = _exponent(x)
    rounded = _quantize(x, exponent - digits + 1, mode)
    if rounded.adjusted() > exponent:  # 9.99 became 10.0: one decimal too many
        rounded = _quantize(rounded, rounded.adjusted() - digits + 1, mode)
    return rounded


def _exponent(x: Number) -> int:
    """The power of ten of the first digit."""
    if not isinstance(x, Fraction):
        return Decimal(x).adjusted()
    guess = len(str(abs(x.numerator))) - len(str(x.denominator))
    return guess if abs(x) >= Fraction(10) ** guess else guess - 1


def _quantize(x: Number, exponent: int, mode: str) -> Decimal:
    if isinstance(x, Fraction):  # a ratio may have no end as a decimal: round it as a whole number of steps
        steps = x / Fraction(10) ** exponent
        return Decimal(_WHOLE[mode](steps)).scaleb(exponent, _WIDE)
    return Decimal(x).quantize(Decimal((0, (1,), exponent)), mode, _WIDE)


def _half_away(steps: Fraction) -> int:
    whole = math.floor(abs(steps) + Fraction(1, 2))
    return whole if steps >= 0 else -whole


_WHOLE: dict[str, Callable[[Fraction], int]] = {
    ROUND_CEILING: math.ceil,
    ROUND_FLOOR: math.floor,
    ROUND_HALF_UP: _half_away,
}
