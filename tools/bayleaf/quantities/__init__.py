"""Units, references, limits and rounding: numbers in, numbers and their text out. No files but the table of units."""

from __future__ import annotations

from bayleaf.quantities.quantity import REFERENCES, Quantity, QuantityError, quantities_of, quantity
from bayleaf.quantities.reading import NUMBER, read_value
from bayleaf.quantities.rounding import round_half_away, round_inward, significant
from bayleaf.quantities.show import show, show_band, with_unit
from bayleaf.quantities.table import Unit, exact, from_si, to_si, to_si_exact, units

__all__ = [
    "NUMBER",
    "REFERENCES",
    "Quantity",
    "QuantityError",
    "Unit",
    "exact",
    "from_si",
    "quantities_of",
    "quantity",
    "read_value",
    "round_half_away",
    "round_inward",
    "show",
    "show_band",
    "significant",
    "to_si",
    "to_si_exact",
    "units",
    "with_unit",
]
