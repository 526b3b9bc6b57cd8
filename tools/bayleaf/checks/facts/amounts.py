"""The numbers with a unit in a record, each with the quantity that its schema says it belongs to."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.quantities import Quantity, units
from bayleaf.records import Book, Record
from bayleaf.records.fields import spots
from bayleaf.records.places import Numbers, Path

ROLES = ("band", "range", "value", "width", "reading", "unit")


class Amount:
    """One unit with the numbers that it belongs to.

    `path` is the map that holds the unit, `unit_path` the unit itself. `numbers` maps the path of each number to it.
    `role`: band (limits of a reading), range (of an instrument, an input, a share), value, width (a difference: an
    error, a tolerance), reading (typed in a job), unit (no number at all). `choices` are all quantities that could be
    meant; `meant` is the one whose list has the unit, else the first, else None (the id is wrong: LINK-1). `known`:
    the unit is one of the quantity's, so that the numbers can be converted.
    `basis` is the basis beside or above the numbers, None where there is none.
    """

    __slots__ = ("basis", "choices", "known", "meant", "numbers", "path", "record", "role", "unit", "unit_path")

    def __init__(
        self,
        record: Record,
        path: tuple,
        role: str,
        unit_path: tuple,
        unit: str,
        numbers: dict[tuple, float],
        choices: tuple[Quantity, ...],
        basis: dict | None,
    ) -> None:
        self.record, self.path, self.role = record, path, role
        self.unit, self.unit_path, self.numbers = unit, unit_path, numbers
        self.basis, self.choices = basis, choices
        quantity = self.meant = next((q for q in choices if unit in q.units), choices[0] if choices else None)
        self.known = quantity is not None and (unit in quantity.units if role != "width" else _is_width(quantity, unit))

    @property
    def quantity(self) -> Quantity:
        """What is measured; only where `known`, or where `meant` has been looked at."""
        if self.meant is None:
            raise ValueError(f"nothing says what the numbers at {self.path} of {self.record.id} measure")
        return self.meant

    def si(self, value: float) -> float:
        """One of the numbers in SI; only where `known`."""
        return self.quantity.width(value, self.unit) if self.role == "width" else self.quantity.si(value, self.unit)


def _is_width(quantity: Quantity, symbol: str) -> bool:
    unit = units().get(quantity.units.get(symbol, symbol if symbol.startswith("delta_") else ""))
    return (
        unit is not None and unit.dimension == quantity.dimension and not unit.exact_offset
    )  # a difference is never in degC


class Amounts:
    """Finds the amounts in records of one book."""

    def __init__(self, book: Book, desk: Desk | None = None) -> None:
        self.book = book
        self.desk = desk or Desk(book)
        self.measured = cache(self._measured)
        self._of: dict[str, list[Amount]] = {}

    def of(self, record: Record) -> list[Amount]:
        """Every amount of a sound record, looked up once."""
        if record.id not in self._of:
            self._of[record.id] = list(self.amounts(record))
        return self._of[record.id]

    def amounts(self, record: Record) -> Iterator[Amount]:
        """Every amount of a sound record, but for one of an input or result that its calculator does not have (CALC-4)."""
        for path, data, about, _name in spots(record.data, record.fields.numbers):
            if data.__class__ is not dict or about.unit not in data:
                continue
            above = _above(record.data, path)
            choices = self._choices(record, path, above, about)
            if choices is None:
                continue
            numbers = {(*path, field): data[field] for field in about.fields if field in data}
            basis = next((above[depth][field] for depth, field in about.bases if field in above[depth]), None)
            unit = data[about.unit]
            yield Amount(record, path, _role(about, data, numbers), (*path, about.unit), unit, numbers, choices, basis)

    def _choices(self, record: Record, path: Path, above: list, about: Numbers) -> tuple[Quantity, ...] | None:
        """The quantities that may be meant; None where what would say so is not there."""
        match about.quantity:
            case None:
                return tuple(self.desk.quantities.values())
            case list(ids):
                return self._known(ids)
            case "record":
                return self._known([record.id])
            case "reading":
                return self._of_reading(record.id)
            case {"reading": "name"}:
                return self._of_reading(_name(path, about))
            case {"reading_in": str(field)}:
                reading = _nearest(above, field)
                return self._of_reading(reading) if isinstance(reading, str) else ()
            case {"field": str(field)}:
                said = _nearest(above, field)
                return self._known(said if isinstance(said, list) else [said])
            case {"same_as": str(names), **where}:
                holder: Record | None = record
                if "of" in where:
                    calculator = _nearest(above, str(where["of"]))
                    holder = self.book.of("calculators").get(calculator) if isinstance(calculator, str) else None
                held = holder.data.get(names, {}) if holder is not None and holder.sound else {}
                return self._known([held[name]["quantity"]]) if (name := _name(path, about)) in held else None
        raise ValueError(f"x-quantity {about.quantity!r} is none that is known")

    def _known(self, ids: list) -> tuple[Quantity, ...]:
        return tuple(q for q in map(self.desk.quantities.get, ids) if q)

    def _of_reading(self, reading: str) -> tuple[Quantity, ...]:
        quantity = self.measured(reading)
        return () if quantity is None else (quantity,)

    def _measured(self, reading: str) -> Quantity | None:
        """What a reading measures; a difference of two readings has the reference `difference`. None for a question."""
        record = self.book.of("readings").get(reading)
        if record is None or not record.sound:
            return None
        quantity, computed = self.desk.quantity(reading), record.data.get("computed", {})
        if quantity and "difference" in computed and "quantity" not in computed and quantity.reference != "difference":
            span = quantity.plausible[1] - quantity.plausible[0]
            reference = "none" if quantity.reference == "none" else "difference"
            return quantity._replace(reference=reference, plausible=(-span, span))
        return quantity


def _above(data: dict, path: Path) -> list:
    """What lies at each step of a path, the record first."""
    result: list = [data]
    for step in path:
        result.append(result[-1][step])
    return result


def _name(path: Path, about: Numbers) -> str:
    """The name, given by the record, of the entry that numbers stand in."""
    if about.name is None:
        raise ValueError(f"the numbers at {path} are asked for a name, and no step of the path is one")
    return str(path[about.name])


def _nearest(above: list, field: str) -> object:
    """A field of the nearest map that has it."""
    return next((held[field] for held in reversed(above) if isinstance(held, dict) and field in held), None)


def _role(about: Numbers, data: dict, numbers: dict) -> str:
    return about.role or ("unit" if not numbers else "range" if "min" in data or "max" in data else "value")
