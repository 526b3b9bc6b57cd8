"""Where the numbers are: every number with a unit in a record, with the quantity that it belongs to."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.quantities import Quantity, units
from bayleaf.records import Book, Record, listed, mapped

# Numbers that no reading stands behind belong to these quantities; where there are several, the unit decides.
_GREATEST = ("rated-pressure",)
_ALTITUDE = ("altitude",)
_FUEL = {"ethanol": ("ethanol-share",), "stoichiometric": ("stoichiometric-ratio",), "density": ("fuel-density",)}
_STEP = {
    "lasts": ("time",),
    "stop_at": (
        "fuel-volume",
        "time",
        "rated-pressure",
        "tank-vapour-pressure",
        "part-temperature",
        "engine-speed",
        "voltage",
        "current",
    ),
    "at_most": (
        "rated-pressure",
        "tank-vapour-pressure",
        "engine-speed",
        "time",
        "vehicle-speed",
        "voltage",
        "current",
        "fuel-volume",
        "part-temperature",
    ),
}


NUMBERED = {
    "systems": "_system",
    "equipment": "_equipment",
    "readings": "_reading",
    "procedures": "_procedure",
    "calculators": "_calculator",
    "vehicles": "_vehicle",
    "jobs": "_job",
    "fuels": "_fuel",
    "hazards": "_hazard",
    "quantities": "_quantity",
}
ROLES = ("band", "range", "value", "width", "reading", "unit")


class Site:
    """One unit with the numbers that it belongs to.

    `path` is the map that holds the unit, `unit_path` the unit itself. `numbers` maps the path of each number to it.
    `role`: band (limits of a reading), range (of an instrument, an input, a share), value, width (a difference: an
    error, a tolerance), reading (typed in a job), unit (no number at all). `choices` are all quantities that could be
    meant; `quantity` is the one whose list has the unit, else the first, else None (the id is wrong: LINK-1). `known`:
    the unit is one of the quantity's, so that the numbers can be converted.
    `basis` is the basis beside or above the numbers, None where there is none.
    """

    __slots__ = ("basis", "choices", "known", "numbers", "path", "quantity", "record", "role", "unit", "unit_path")

    def __init__(
        self,
        record: Record,
        path: tuple,
        role: str,
        quantity: Quantity | None,
        unit: str,
        unit_path: tuple,
        numbers: dict[tuple, float],
        basis: dict | None = None,
        choices: tuple[Quantity, ...] = (),
    ) -> None:
        self.record, self.path, self.role = record, path, role
        self.quantity, self.unit, self.unit_path, self.numbers = quantity, unit, unit_path, numbers
        self.basis, self.choices = basis, choices
        self.known = quantity is not None and (unit in quantity.units if role != "width" else _is_width(quantity, unit))

    def si(self, value: float) -> float:
        """A number of this site in SI; only where `known`."""
        return self.quantity.width(value, self.unit) if self.role == "width" else self.quantity.si(value, self.unit)


def _is_width(quantity: Quantity, symbol: str) -> bool:
    unit = units().get(quantity.units.get(symbol, symbol if symbol.startswith("delta_") else ""))
    return (
        unit is not None and unit.dimension == quantity.dimension and not unit.exact_offset
    )  # a difference is never in degC


class Sites:
    """Finds the sites of records of one book."""

    def __init__(self, book: Book, desk: Desk | None = None) -> None:
        self.book = book
        self.desk = desk or Desk(book)
        self.measured = cache(self._measured)
        self._kinds = {kind: getattr(self, name) for kind, name in NUMBERED.items()}

    def of(self, record: Record) -> Iterator[Site]:
        """Every site of a sound record; nothing for kinds without numbers."""
        finder = self._kinds.get(record.kind)
        return finder(record, record.data) if finder else iter(())

    def _measured(self, reading: str) -> Quantity | None:
        """What a reading measures; a difference of two readings has the reference `difference`. None for a question."""
        record = self.book.of("readings").get(reading)
        if record is None or not record.sound:
            return None
        quantity, computed = self.desk.quantity(reading), mapped(record.data.get("computed"))
        if quantity and "difference" in computed and "quantity" not in computed and quantity.reference != "difference":
            span = quantity.plausible[1] - quantity.plausible[0]
            reference = "none" if quantity.reference == "none" else "difference"
            return quantity._replace(reference=reference, plausible=(-span, span))
        return quantity

    def _site(
        self, record: Record, path: tuple, role: str, among: tuple, data: dict, fields: tuple, basis: dict | None = None
    ) -> Site:
        choices = tuple(q for q in (self.desk.quantities.get(c) if isinstance(c, str) else c for c in among) if q)
        unit = data["unit"]
        quantity = next((q for q in choices if unit in q.units), choices[0] if choices else None)
        numbers = {(*path, f): data[f] for f in fields if f in data}
        return Site(record, path, role, quantity, unit, (*path, "unit"), numbers, data.get("basis", basis), choices)

    def _system(self, record: Record, data: dict) -> Iterator[Site]:
        for i, path in enumerate(listed(data.get("paths"))):
            if "greatest" in path:
                yield self._site(record, ("paths", i, "greatest"), "value", _GREATEST, path["greatest"], ("value",))
        for reading, band in mapped(data.get("bands")).items():
            yield from self._band(record, ("bands", reading), reading, band)

    def _band(self, record: Record, path: tuple, reading: str, band: dict) -> Iterator[Site]:
        quantity = self.measured(reading)
        if "expected" not in band:
            yield self._site(record, path, "band", (quantity,), band, ("min", "max"))
            return
        yield self._site(record, (*path, "within"), "width", (quantity,), band["within"], ("value",), band["basis"])
        expected = band["expected"]
        yield from self._feeds(
            record, (*path, "expected", "inputs"), expected["calculator"], mapped(expected.get("inputs")), band["basis"]
        )

    def _feeds(self, record: Record, path: tuple, calculator: str, feeds: dict, basis: dict | None) -> Iterator[Site]:
        held = self.book.of("calculators").get(calculator)
        inputs = mapped(held.data.get("inputs")) if held and held.sound else {}
        for name, feed in feeds.items():
            if "value" in feed and name in inputs:
                yield self._site(record, (*path, name), "value", (inputs[name]["quantity"],), feed, ("value",), basis)

    def _equipment(self, record: Record, data: dict) -> Iterator[Site]:
        measures, basis, error = tuple(listed(data.get("measures"))), data.get("basis"), mapped(data.get("error"))
        if "range" in data:
            yield self._site(record, ("range",), "range", measures, data["range"], ("min", "max"), basis)
        for i, zone in enumerate(listed(error.get("zones"))):
            yield self._site(record, ("error", "zones", i), "range", measures, zone, ("min", "max"), basis)
        if "value" in error:
            yield self._width(record, ("error",), measures, error, basis)
        for field in ("resolution", "readability", "repeatability"):
            if field in data:
                yield self._width(record, (field,), measures, data[field], basis)
        if "rated" in data:
            yield self._site(record, ("rated",), "value", _GREATEST, data["rated"], ("value",), basis)

    def _width(self, record: Record, path: tuple, among: tuple, data: dict, basis: dict | None) -> Site:
        return self._site(record, path, "width", among, data, ("value",), basis)

    def _reading(self, record: Record, data: dict) -> Iterator[Site]:
        yield from self._relations(record, data)
        if "unit" in data:
            yield self._site(record, (), "unit", (self.measured(record.id),), data, ())
        computed = mapped(data.get("computed"))
        if "calculator" in computed:
            yield from self._feeds(record, ("computed", "inputs"), computed["calculator"], computed["inputs"], None)

    def _relations(self, record: Record, data: dict) -> Iterator[Site]:
        for i, relation in enumerate(listed(data.get("agrees_with"))):
            path, among = ("agrees_with", i, "within"), (self.measured(record.id),)
            yield self._width(record, path, among, relation["within"], relation["basis"])

    def _procedure(self, record: Record, data: dict) -> Iterator[Site]:
        for i, step in enumerate(data["steps"]):
            for field, among in _STEP.items():
                if field in step:
                    yield self._site(record, ("steps", i, field), "value", among, step[field], ("value",))

    def _calculator(self, record: Record, data: dict) -> Iterator[Site]:
        inputs, results = data["inputs"], data["result"]
        for name, one in inputs.items():
            yield self._site(record, ("inputs", name), "range", (one["quantity"],), one, ("min", "max", "default"))
        for name, one in mapped(data.get("constants")).items():
            yield self._site(record, ("constants", name), "value", (one["quantity"],), one, ("value",))
        for name, one in results.items():
            yield self._site(record, ("result", name), "unit", (one["quantity"],), one, ())
        for i, check in enumerate(data["checks"]):
            for name, given in check["given"].items():
                if name in inputs:
                    yield self._site(
                        record,
                        ("checks", i, "given", name),
                        "value",
                        (inputs[name]["quantity"],),
                        given,
                        ("value",),
                        check.get("basis"),
                    )
            for name, gives in check["gives"].items():
                if name in results:
                    among, path = (results[name]["quantity"],), ("checks", i, "gives", name)
                    yield self._site(record, path, "value", among, gives, ("value",), check.get("basis"))
                    yield self._width(record, (*path, "within"), among, gives["within"], check.get("basis"))

    def _vehicle(self, record: Record, data: dict) -> Iterator[Site]:
        yield self._site(record, ("altitude",), "value", _ALTITUDE, data["altitude"], ("value",))
        for reading, band in mapped(data.get("bands")).items():
            yield from self._band(record, ("bands", reading), reading, band)

    def _job(self, record: Record, data: dict) -> Iterator[Site]:
        if "altitude" in mapped(data.get("car")):
            yield self._site(record, ("car", "altitude"), "value", _ALTITUDE, data["car"]["altitude"], ("value",))
        for reading, band in mapped(data.get("maker_bands")).items():
            yield self._site(record, ("maker_bands", reading), "band", (self.measured(reading),), band, ("min", "max"))
        for i, entry in enumerate(listed(data.get("readings"))):
            if "value" in entry:
                yield self._site(
                    record, ("readings", i), "reading", (self.measured(entry["reading"]),), entry, ("value",)
                )

    def _fuel(self, record: Record, data: dict) -> Iterator[Site]:
        for field, among in _FUEL.items():
            yield self._site(
                record,
                (field,),
                "range" if field == "ethanol" else "value",
                among,
                data[field],
                ("min", "max", "value"),
            )

    def _hazard(self, record: Record, data: dict) -> Iterator[Site]:
        for i, trigger in enumerate(listed(data.get("triggers"))):
            if "greatest_at_least" in trigger:
                path = ("triggers", i, "greatest_at_least")
                yield self._site(record, path, "value", _GREATEST, trigger["greatest_at_least"], ("value",))

    def _quantity(self, record: Record, data: dict) -> Iterator[Site]:
        yield self._site(record, ("plausible",), "range", (record.id,), data["plausible"], ("min", "max"))
