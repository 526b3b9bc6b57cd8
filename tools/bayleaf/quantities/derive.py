"""Derive the closed table of units from our pint definition file.

Only maintainers and the tests run this; nothing else imports pint.
Usage: `python -m bayleaf.quantities.derive` rewrites table.json beside it.
"""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pint

HERE = Path(__file__).parent
DEFINITIONS = HERE / "units.txt"
TABLE = HERE / "table.json"
BASE = ("[length]", "[mass]", "[time]", "[temperature]", "[current]")


def registry(number: type = Fraction) -> pint.UnitRegistry[Any]:
    """A pint registry that knows the units of units.txt and nothing else; `number` is its type of number."""
    import pint

    return pint.UnitRegistry(str(DEFINITIONS), non_int_type=number, cache_folder=None)


def derive() -> dict[str, dict[str, Any]]:
    """{symbol: {dimension, factor, offset, shown}}; factor and offset are exact ratios written as text.

    A value v in the unit is v * factor + offset in m, kg, s, K, A.
    """
    pint_units: Any = registry()  # its converters and its list of units have no public types
    table = {}
    for name, unit in pint_units._units.items():
        if name != unit.name or not unit.defined_symbol or name.startswith("delta_"):
            continue  # other names of the same unit, units without a symbol, and the differences pint adds by itself
        symbol = unit.defined_symbol
        dimensions = pint_units.get_dimensionality(name)
        factor, _ = pint_units.get_base_units(name)
        table[symbol] = {
            "dimension": [int(dimensions.get(base, 0)) for base in BASE],
            "factor": str(Fraction(factor)),
            "offset": str(Fraction(getattr(unit.converter, "offset", 0))),
            "shown": (unit.aliases[0] if unit.aliases else symbol).replace("_", " "),
        }
    return table


def text(table: dict[str, dict[str, Any]]) -> str:
    """The table as it is kept: one unit a line, in the order of units.txt."""
    lines = [f"{json.dumps(symbol)}: {json.dumps(unit, ensure_ascii=False)}" for symbol, unit in table.items()]
    return "{\n" + ",\n".join(lines) + "\n}\n"


if __name__ == "__main__":
    TABLE.write_text(text(derive()), encoding="utf-8", newline="\n")
