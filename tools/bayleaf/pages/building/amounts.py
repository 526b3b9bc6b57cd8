"""Numbers on a page: as written first, then in the other side's unit, and always with where they come from."""

from __future__ import annotations

from bayleaf.pages.building.inline import EMPTY, inline, joined, small, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.view import View
from bayleaf.quantities import Quantity, QuantityError, show, show_band
from bayleaf.records import Record, mapped

PRACTICE = "common practice, no source"
INVENTED = "INVENTED for the demonstration"


def basis(view: View, data: object) -> Markup:
    """Where a number comes from, in words."""
    match data:
        case {"source": str(id), "place": str(place)}:
            source = view.get(id, "sources")
            recalled = "" if source is None or source.data.get("opened") else "; recalled, the text was not open"
            short = source.title.split(",")[0] if source else id
            return inline(view.link(id, short), ", ", place, recalled)
        case {"calculator": str(id)}:
            return inline("from the calculator ", view.link(id))
        case {"practice": True}:
            return text(PRACTICE)
        case {"invented": True}:
            return strong(INVENTED)
        case _:
            return text("no basis given")


def dig(data: object, path: tuple) -> object:
    """The value at a path of keys and indexes, None where there is none."""
    for step in path:
        try:
            data = data[step]  # type: ignore[index]
        except (KeyError, IndexError, TypeError):
            return None
    return data


def typed(record: Record, path: tuple) -> str:
    """A number as it was typed; '' where there is none."""
    value = dig(record.data, path)
    return "" if value is None else record.typed(path) or repr(value)


def amount(view: View, record: Record, path: tuple, quantity: Quantity | None = None) -> Markup:
    """A {value, unit} at a path: "0.5 L (0.528 qt)". The quantity is taken from the unit where it is not known or has no such unit."""
    data = mapped(dig(record.data, path))
    if "value" not in data:
        return EMPTY
    unit, number = str(data.get("unit", "")), typed(record, (*path, "value"))
    if quantity is None or unit not in quantity.units:  # how far a temperature may be off is in degrees of difference
        quantity = by_unit(view, unit)
    if quantity is None:
        return text(f"{number} {unit}")
    try:
        return text(show(quantity.si(data["value"], unit), quantity, unit=quantity.symbol(unit), written=number))
    except (QuantityError, AttributeError, KeyError):
        return text(f"{number} {unit}")


def sourced(view: View, record: Record, path: tuple, quantity: Quantity | None = None) -> Markup:
    """A value with its reason and its basis beside it."""
    data = mapped(dig(record.data, path))
    return joined([amount(view, record, path, quantity), small("[", remark(view, data), "]")], " ") if data else EMPTY


def remark(view: View, data: dict) -> Markup:
    """The reason, where one is given, and the basis of the numbers in a map."""
    reason, origin = view.prose(data.get("because")), basis(view, data.get("basis"))
    if not reason:
        return origin
    stop = "" if str(data["because"]).endswith(".") else "."
    return inline(reason, f"{stop} Basis: ", origin)


def band(view: View, record: Record, path: tuple, quantity: Quantity | None = None) -> Markup:
    """A {min, max, unit} at a path, the other side's limits rounded inward: "36–65 psi (249–448 kPa)"."""
    data = mapped(dig(record.data, path))
    unit = str(data.get("unit", ""))
    quantity = quantity or by_unit(view, unit)
    written = (typed(record, (*path, "min")), typed(record, (*path, "max")))
    as_written = text(
        f"{written[0]} to {written[1]} {unit}"
        if all(written)
        else f"{'at least' if written[0] else 'at most'} {written[0] or written[1]} {unit}"
    )
    if quantity is None:
        return as_written
    try:
        return text(show_band(data.get("min"), data.get("max"), quantity.symbol(unit), quantity, written=written))
    except (QuantityError, AttributeError, KeyError):
        return as_written


def by_unit(view: View, unit: str) -> Quantity | None:
    """The first quantity of the vocabulary that accepts a unit: enough to say a value on the other side too."""
    accepting = view.sides.get(unit)
    return accepting[0] if accepting else None
