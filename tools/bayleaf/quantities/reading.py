"""How a typed value is read: the command and, by the same pattern, the form of a page."""

from __future__ import annotations

import re

from bayleaf.quantities.quantity import Quantity, QuantityError, or_list

# A number as people type it: 43.5, .5, 1e3, 1,000. The page's script uses the same text, so it holds only what both
# languages read alike. A comma stands between thousands and nowhere else.
NUMBER = r"[+-]?(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]*)?|[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?"
_VALUE = re.compile(rf"\s*({NUMBER})(?![0-9,])\s*(\S.*?)?\s*\Z")


def read_value(text: str, quantity: Quantity) -> tuple[float, str]:
    """Read "43.5 psi" as (43.5, "psi"); raises QuantityError, a ValueError whose text is one line for the user."""
    match = _VALUE.match(text)
    if not match:
        if re.match(r"\s*[+-]?[0-9.]*,", text):
            raise QuantityError(f"{text!r} has a comma in its number", "write a point; a comma only as in 1,000")
        raise QuantityError(f"{text!r} is not a number with a unit", f"write it like 43.5 {quantity.shown[0]}")
    number = match[1].replace(",", "")
    if re.match(r"[+-]?00", number):
        raise QuantityError(
            f"{match[1]} is not 0", "a wire larger than number 0 counts down: 00 is -1, 000 is -2, 0000 is -3"
        )
    spelling = match[2] or ("1" if "1" in quantity.units else None)
    if spelling is None:
        raise QuantityError(f"{text!r} has no unit", f"write {match[1]} {or_list(quantity.symbols())}")
    symbol, value = quantity.symbol(spelling), float(number)
    if quantity.reference == "vacuum" and value < 0:
        raise QuantityError(f"{text!r}: a vacuum is a positive number", f"write {match[1][1:]} {spelling}")
    return value, symbol
