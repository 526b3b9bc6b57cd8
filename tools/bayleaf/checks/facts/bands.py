"""Bands as the checks compare them: their limits in SI, and the bands of one reading inside one family of systems."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from functools import cached_property

from bayleaf.checks.facts.amounts import Amount, Amounts
from bayleaf.records import Book, Record


def limits(amount: Amount) -> tuple[float, float]:
    """(low, high) in SI of an amount whose unit is known; infinite on a side without a limit."""
    low, high = amount.numbers.get((*amount.path, "min")), amount.numbers.get((*amount.path, "max"))
    return (-math.inf if low is None else amount.si(low), math.inf if high is None else amount.si(high))


def as_written(amount: Amount) -> str:
    """The limits as they are written: `36 to 65 psi`, `at most 0.5 V`."""
    values = [amount.record.typed(path) or repr(value) for path, value in amount.numbers.items()]
    side = "" if len(values) > 1 else "at least " if (*amount.path, "min") in amount.numbers else "at most "
    return f"{side}{' to '.join(values)} {amount.unit}"


class Bands:
    """The bands of one book, those of systems, of vehicles and of jobs."""

    def __init__(self, book: Book, amounts: Amounts) -> None:
        self.book, self.amounts = book, amounts
        self._systems: dict[str, list[Record]] = {}

    @cached_property
    def by_reading(self) -> dict[str, list[Amount]]:
        """Every band whose unit is known, by reading."""
        bands: dict[str, list[Amount]] = defaultdict(list)
        for kind in ("systems", "vehicles", "jobs"):
            for record in self.book.of(kind).values():
                for amount in self.amounts.of(record) if record.sound else ():
                    if amount.role == "band" and amount.known:
                        bands[amount.path[1]].append(amount)
        return bands

    def by_family(self) -> dict[tuple[str, str], list[Amount]]:
        """(family, reading) to every band of it: of the systems, and of the cars that have one of them."""
        bands: dict[tuple[str, str], list[Amount]] = defaultdict(list)
        for reading, amounts in self.by_reading.items():
            for amount in amounts:
                for family in {system.data["family"] for system in self.systems(amount.record)}:
                    bands[family, reading].append(amount)
        return bands

    def of(self, reading: str, systems: list[str]) -> Iterator[Amount]:
        """The bands of a reading in these systems and in the cars that have one of them; no systems: in all."""
        for amount in self.by_reading.get(reading, ()):
            if not systems or any(system.id in systems for system in self.systems(amount.record)):
                yield amount

    def systems(self, record: Record) -> list[Record]:
        """A system itself; the sound systems of a vehicle or of a job's car."""
        if record.id not in self._systems:
            self._systems[record.id] = [record] if record.kind == "systems" else list(self._of_car(record))
        return self._systems[record.id]

    def _of_car(self, record: Record) -> Iterator[Record]:
        data = record.data
        if record.kind == "jobs":
            vehicle = self.book.of("vehicles").get(data.get("vehicle", ""))
            data = data.get("car", {}) or (vehicle.data if vehicle and vehicle.sound else {})
        for id in data.get("systems", []):
            system = self.book.of("systems").get(id)
            if system and system.sound:
                yield system
