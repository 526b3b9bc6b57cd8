"""Values that are computed and not read: differences, calculators, and what they may be out by."""

from __future__ import annotations

import math
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from bayleaf.diagnosis.car.car import Car
from bayleaf.diagnosis.verdicts.instrument import Instrument
from bayleaf.quantities import Quantity, QuantityError, quantities_of
from bayleaf.records import Book, mapped

if TYPE_CHECKING:
    from bayleaf.formulas.calculator.model import Calculator

_FUEL = {"fuel-stoichiometric": "stoichiometric", "fuel-density": "density", "fuel-ethanol": "ethanol"}


class Known(NamedTuple):
    """A value in hand, in SI: what it may be out by (None when its instrument does not say) and what it was read with."""

    value: float
    allowance: float | None = None
    instrument: Instrument | None = None


class CannotCompute(Exception):
    """Why a value cannot be computed: one sentence for the technician."""


class Desk:
    """A book's quantities and calculators, each made ready once."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._ready: dict[str, Calculator] = {}

    @cached_property
    def quantities(self) -> dict[str, Quantity]:
        """The sound quantities of the book by id."""
        return quantities_of(self.book)

    def quantity(self, reading: str) -> Quantity | None:
        """What a measured or computed reading measures; None for a question or an unknown quantity."""
        data = self.book.of("readings")[reading].data
        computed = mapped(data.get("computed"))
        id = data.get("quantity") or computed.get("quantity")
        if id is None and "calculator" in computed:
            calculator = self.book.of("calculators").get(computed["calculator"])
            results = mapped(calculator.data.get("result")) if calculator else {}
            id = mapped(results.get(_result(results, computed.get("result")) or "")).get("quantity")
        if id is None and "difference" in computed:
            of = self.book.of("readings").get(computed["difference"]["of"])
            id = of.data.get("quantity") if of else None
        return self.quantities.get(id) if isinstance(id, str) else None

    def difference(self, known: dict[str, Known], of: str, less: str) -> Known:
        """One reading less another. With one instrument its repeatability counts, else both allowances in full."""
        a, b = self._needed(known, of), self._needed(known, less)
        shared = a.instrument if a.instrument and a.instrument == b.instrument else None
        allowance = shared.allowance_of_difference() if shared else None
        if allowance is None and a.allowance is not None and b.allowance is not None:
            allowance = a.allowance + b.allowance
        return Known(a.value - b.value, allowance, shared)

    def calculate(self, known: dict[str, Known], car: Car, id: str, feeds: dict[str, Any], result: str | None) -> Known:
        """A calculator's result, fed with readings, fixed values and facts of the car; its own defaults fill the rest.

        What the readings may be out by is carried through: each is moved by its allowance either way, the larger
        change counts, and the changes add up.
        """
        from bayleaf.formulas.calculator.compile import compile_calculator  # not needed by a book without expectations
        from bayleaf.formulas.language.errors import FormulaError  # not needed by a book without expectations

        record = self.book.of("calculators").get(id)
        if record is None:
            raise CannotCompute(f"There is no calculator {id}.")
        if id not in self._ready:
            try:
                self._ready[id] = compile_calculator(record.data, self.quantities)
            except FormulaError as err:
                raise CannotCompute(f"The calculator {record.title} cannot be used: {err}") from None
        inputs, out_by = {}, {}
        for name, field in mapped(record.data.get("inputs")).items():
            inputs[name], out_by[name] = self._input(known, car, field, mapped(feeds.get(name)))
        inputs = self._ready[id].filled({name: x for name, x in inputs.items() if name in feeds} or inputs)
        if self._ready[id].contradicted(list(inputs.values())) or self._ready[id].rivals(inputs):
            raise CannotCompute(f"{record.title} has no result for these values, because they contradict each other.")
        line = _result(mapped(record.data.get("result")), result)

        def at(moved: dict[str, float]) -> float:
            value = self._ready[id].evaluate(inputs | moved).get(line or "", math.nan)
            if not math.isfinite(value):
                raise CannotCompute(f"{record.title} has no result for these values.")
            return value

        value = at({})
        doubt = sum(max(abs(at({n: inputs[n] + s * w}) - value) for s in (-1, 1)) for n, w in out_by.items() if w)
        return Known(value, doubt)

    def _input(
        self, known: dict[str, Known], car: Car, field: dict[str, Any], feed: dict[str, Any]
    ) -> tuple[float, float]:
        quantity = self.quantities.get(field.get("quantity", ""))
        if quantity is None:
            raise CannotCompute(f"There is no quantity {field.get('quantity')}.")
        if "reading" in feed:
            fed = self._needed(known, feed["reading"])
            return fed.value, fed.allowance or 0.0
        amount: dict[str, Any] = {"value": field.get("default"), "unit": field.get("unit")}
        if "value" in feed:
            amount = feed
        elif "car" in feed:
            amount = self._fact(car, feed["car"])
        try:
            return quantity.si(amount["value"], amount["unit"]), 0.0
        except (KeyError, TypeError, QuantityError):
            raise CannotCompute(f"The value for {quantity.title.lower()} is missing.") from None

    def _fact(self, car: Car, what: str) -> dict[str, Any]:
        if what == "altitude":
            return car.altitude or {}
        fuel = self.book.of("fuels").get(car.fuel)
        amount = mapped(fuel.data.get(_FUEL.get(what, ""))) if fuel else {}
        if {"min", "max"} <= amount.keys():  # a range on the label: its middle
            return {"value": (amount["min"] + amount["max"]) / 2, "unit": amount["unit"]}
        return amount

    def _needed(self, known: dict[str, Known], reading: str) -> Known:
        if reading not in known:
            record = self.book.of("readings").get(reading)
            raise CannotCompute(f"Take this reading first: {record.title if record else reading}.")
        return known[reading]


def _result(results: dict[str, Any], wanted: str | None) -> str | None:
    return wanted if wanted in results else next(iter(results), None)
