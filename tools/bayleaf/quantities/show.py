"""How a page writes a value: as it was written first, then in the other system of units."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from bayleaf.quantities.quantity import Quantity
from bayleaf.quantities.rounding import plain, round_half_away, round_inward, significant
from bayleaf.quantities.table import exact, from_si, to_si_exact, units

CLOSE = ("°", "")  # written without a space before them


def with_unit(number: str, symbol: str) -> str:
    """A number and its unit as a page writes them: "43.5 psi", "25 °C", "14.7"."""
    shown = "" if symbol == "1" else units()[symbol].shown
    return number + shown if shown in CLOSE else f"{number} {shown}"


def others(quantity: Quantity, symbol: str) -> list[str]:
    """The units in which a value written in `symbol` is repeated: the customary one, the SI one, or both."""
    shown = units()[symbol].shown
    return [other for other in dict.fromkeys(quantity.shown) if units()[other].shown != shown]


def show(x: float, quantity: Quantity, digits: int = 3, unit: str = "", written: str = "") -> str:
    """An SI value as "43.5 psi (300 kPa)".

    `unit`: the symbol to say first, the quantity's customary one unless given. `written`: the number as it was typed.
    """
    first = unit or quantity.shown[0]
    number = written or significant(from_si(x, first, quantity.reference), digits)
    more = [
        with_unit(significant(from_si(x, other, quantity.reference), digits), other)
        for other in others(quantity, first)
    ]
    return _join(with_unit(number, first), more)


def show_band(
    low: float | None,
    high: float | None,
    unit: str,
    quantity: Quantity,
    digits: int = 3,
    written: tuple[str, str] = ("", ""),
) -> str:
    """Limits as typed in `unit`, then rounded inward: "36–65 psi (249–448 kPa)", "at least 36 psi (249 kPa)".

    None stands for a side without a limit. `written`: both numbers as they were typed.
    """
    more = []
    for other in others(quantity, unit):
        exact_low, exact_high = (_in(value, unit, other, quantity.reference) for value in (low, high))
        rounded_low, rounded_high = round_inward(exact_low, exact_high, digits)
        more.append(_span(_trim(rounded_low, exact_low), _trim(rounded_high, exact_high), other))
    side = "" if low is not None and high is not None else "at most " if low is None else "at least "
    typed_low = None if low is None else written[0] or _number(low)
    typed_high = None if high is None else written[1] or _number(high)
    return side + _join(_span(typed_low, typed_high, unit), more)


def _in(value: float | None, unit: str, other: str, reference: str) -> Fraction | None:
    """The exact value of a limit in another unit."""
    if value is None:
        return None
    base = units()[other]
    offset = base.exact_offset if reference == "absolute" else 0
    return (to_si_exact(value, unit, reference) - offset) / base.exact_factor


def _trim(limit: Decimal | None, value: Fraction | None) -> str | None:
    """The text of a rounded limit, without the zeros of one that needed no rounding."""
    return None if limit is None else _trimmed(limit, value)


def _trimmed(limit: Decimal, value: Fraction | None) -> str:
    text = plain(limit)
    return text.rstrip("0").rstrip(".") if "." in text and Fraction(limit) == value else text


def _number(value: float) -> str:
    """A number as a person types it, for a caller that has no text of it."""
    return _trimmed(round_half_away(exact(value), 15), exact(value))


def _span(low: str | None, high: str | None, symbol: str) -> str:
    if low is None or high is None:
        return with_unit(low or high or "", symbol)
    dash = " to " if low.startswith("-") or high.startswith("-") else "–"
    return with_unit(low + dash + high, symbol)


def _join(first: str, more: list[str]) -> str:
    return f"{first} ({', '.join(more)})" if more else first
