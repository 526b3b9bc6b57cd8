"""Instruments as steps name them: by one of their own, or by a type that several belong to."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from bayleaf.checks.facts.amounts import Amounts
from bayleaf.diagnosis.car.layout import Layout
from bayleaf.diagnosis.verdicts.instrument import Instrument, instrument_of, types_of
from bayleaf.quantities import Quantity, to_si
from bayleaf.records import Book, Record
from bayleaf.safety.paths import pascals


class Instruments:
    """The equipment of one book as it measures."""

    def __init__(self, book: Book, amounts: Amounts, layout: Layout) -> None:
        self.book, self.amounts, self.layout = book, amounts, layout
        self._one: dict[tuple[str, str, str], Instrument | None] = {}
        self._several: dict[tuple[str, str], list[Instrument]] = {}

    @cached_property
    def of_type(self) -> dict[str, list[str]]:
        """Every equipment id to the ids that it stands for: itself and all that name it as their type."""
        ids: dict[str, list[str]] = {}
        for id, record in self.book.of("equipment").items():
            for above in types_of(self.book, id) if record.sound else ():
                ids.setdefault(above, []).append(id)
        return ids

    def one(self, id: str, quantity: Quantity) -> Instrument | None:
        """A piece of equipment as it measures a quantity."""
        key = (id, quantity.id, quantity.reference)
        if key not in self._one:
            self._one[key] = instrument_of(self.book, id, quantity)
        return self._one[key]

    def of(self, named: str, reading: str) -> list[Instrument]:
        """Those that a name stands for and that state a range for this reading: itself, or the ones of that type."""
        key = (named, reading)
        if key not in self._several:
            quantity = self.amounts.measured(reading)
            ids = self.of_type.get(named, ()) if named in self.book.of("equipment") else ()
            known = [self.one(id, quantity) for id in ids] if quantity else []
            self._several[key] = [one for one in known if one and one.low is not None and one.high is not None]
        return self._several[key]

    def too_short(self, record: Record, named: str, reading_id: str) -> Iterator[tuple[Instrument, str]]:
        """(instrument, greatest pressure as written) where the scale ends at or under what the measured fuel path can hold."""
        reading, quantity = self.book.of("readings").get(reading_id), self.amounts.measured(reading_id)
        if reading is None or quantity is None or quantity.reference != "gauge":
            return
        on = self.layout.paths(reading.data.get("at", ""))
        systems = record.data["systems"]
        greatest = [
            path["greatest"]
            for id, system in self.book.of("systems").items()
            if system.sound and (not systems or id in systems)
            for path in system.data["paths"]
            if "greatest" in path and path["carries"] == "fuel" and (id, path["name"]) in on
        ]
        most = max(greatest, key=lambda pressure: pascals(pressure) or 0.0, default=None)
        if most is None:
            return
        limit = pascals(most) or to_si(0, "Pa", "gauge")
        for one in self.of(named, reading_id):
            if one.high is not None and one.high <= limit:
                yield one, f"{most['value']:g} {most['unit']}, the greatest credible pressure there"
