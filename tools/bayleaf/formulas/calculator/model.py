"""A calculator: inputs, constants, lines in the order they need each other, and results.

Values are in SI throughout; units count only in `given`, `shown` and the checks.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.evaluate import compiled
from bayleaf.formulas.language.tree import Node
from bayleaf.formulas.language.types import Type
from bayleaf.formulas.output.emit import body
from bayleaf.quantities import Quantity, QuantityError, from_si, significant, to_si, with_unit


class Input(NamedTuple):
    """An input; `default`, `low` and `high` in SI, `typed` the three numbers as written in `symbol`."""

    name: str
    quantity: Quantity
    symbol: str
    default: float
    low: float
    high: float
    typed: tuple[float, float, float]
    whole: bool = False


class Constant(NamedTuple):
    """A constant; `value` in SI, `typed` as written in `symbol`."""

    name: str
    quantity: Quantity
    symbol: str
    value: float
    typed: float


class Line(NamedTuple):
    """A line of the formula: its text, its tree as written, the same in plain arithmetic, and its type."""

    name: str
    text: str
    tree: Node
    plain: Node
    type: Type


class Requirement(NamedTuple):
    """A comparison that must hold: as written, why, the same in plain arithmetic, and the names that it speaks of."""

    text: str
    because: str
    plain: Node
    names: tuple[str, ...]


class Result(NamedTuple):
    """A line that is shown: its quantity, unit and significant digits."""

    name: str
    quantity: Quantity
    symbol: str
    digits: int
    says: tuple[tuple[float, str], ...] = ()  # up to which value in SI, and what is said there

    def text(self, x: float, symbol: str = "") -> str:
        """A value without its unit, in this unit or another of the quantity; "undefined" where it is."""
        if math.isnan(x):
            return "undefined"
        return significant(from_si(x, symbol or self.symbol, self.quantity.reference), self.digits)

    def shown(self, x: float) -> str:
        """A value with its unit, and in brackets in the other system's unit."""
        if math.isnan(x):
            return "undefined"
        first, other = with_unit(self.text(x), self.symbol), self.other()
        return f"{first} ({with_unit(self.text(x, other), other)})" if other else first

    def other(self) -> str:
        """The unit of the other system, or nothing where both share one."""
        customary, si = self.quantity.shown
        other = customary if self.symbol == si else si
        if other == self.symbol or not any(self.quantity.dimension):  # 71.4 % as 0.714 tells nobody more
            return ""
        return other

    def said(self, x: float) -> str:
        """What a value means in words; "" where the record gives no words for it."""
        return next((words for limit, words in self.says if x < limit), "")


class Calculator:
    """A proved calculator. `lines` stand in the order they need each other; `table` and `chart` as in the record."""

    def __init__(
        self,
        title: str,
        inputs: dict[str, Input],
        constants: dict[str, Constant],
        lines: dict[str, Line],
        results: dict[str, Result],
        table: Mapping[str, Any],
        chart: Mapping[str, Any],
        requirements: list[Requirement] | None = None,
        exclusive: list[tuple[str, ...]] | None = None,
    ) -> None:
        self.title, self.inputs, self.constants, self.lines, self.results = title, inputs, constants, lines, results
        self.table, self.chart = table, chart
        self.requirements, self.exclusive = requirements or [], exclusive or []
        trees = {name: line.plain for name, line in lines.items()}
        trees |= {f"({place})": one.plain for place, one in enumerate(self.requirements)}
        self.assignments: list[str] = body(
            list(inputs), {name: constant.value for name, constant in constants.items()}, trees
        )
        self._run: Callable[[list[float]], None] = compiled(self.assignments)

    def run(self, values: list[float]) -> list[float]:
        """Inputs in order, in SI, to the lines in order; NaN is undefined. The fast way for tables."""
        return self.everything(values)[: len(self.lines)]

    def everything(self, values: list[float]) -> list[float]:
        """The lines in order, then 1 or 0 for each requirement."""
        v = [*values, *[math.nan] * (len(self.lines) + len(self.requirements))]
        self._run(v)
        return v[len(self.inputs) :]

    def contradicted(self, values: list[float]) -> list[Requirement]:
        """The requirements that the inputs, in order and in SI, do not meet."""
        kept = self.everything(values)[len(self.lines) :]
        return [one for one, holds in zip(self.requirements, kept, strict=True) if holds == 0]

    def filled(self, given: Mapping[str, float]) -> dict[str, float]:
        """Every input in SI: as given, at 0 where another that excludes it is given, else at its default."""
        yields = {name for group in self.exclusive if not given.keys().isdisjoint(group) for name in group}
        return {n: given.get(n, 0.0 if n in yields else one.default) for n, one in self.inputs.items()}

    def rivals(self, values: Mapping[str, float]) -> tuple[str, ...]:
        """Inputs that exclude each other and yet are both away from 0; () where there are none."""
        for group in self.exclusive:
            if len(away := tuple(name for name in group if values[name] != 0)) > 1:
                return away
        return ()

    def evaluate(self, given: Mapping[str, float] | None = None) -> dict[str, float]:
        """{input: SI} to {line: SI}; an input left out stands at its default. NaN is undefined."""
        given = given or {}
        for name in given:
            if name not in self.inputs:
                raise FormulaError(f"there is no input {name}", f"there are {', '.join(self.inputs)}")
        return dict(zip(self.lines, self.run(list(self.filled(given).values())), strict=True))

    def si(self, name: str, value: float, unit: str) -> float:
        """The SI value of an input in a unit; raises FormulaError for an unknown input, a wrong unit, a value out of limits."""
        if name not in self.inputs:
            raise FormulaError(f"there is no input {name}", f"there are {', '.join(self.inputs)}")
        one = self.inputs[name]
        try:
            symbol = one.quantity.symbol(unit)
        except QuantityError as err:
            raise FormulaError(err.message, err.help) from None
        x = to_si(value, symbol, one.quantity.reference) if math.isfinite(value) else math.nan
        if one.whole and value != round(value):
            raise FormulaError(f"{name} is {value:.12g}", "it is counted, so it is a whole number")
        if not one.low <= x <= one.high:
            low, high = (f"{number:.12g}" for number in one.typed[1:])
            raise FormulaError(
                f"{name} is {with_unit(f'{value:.12g}', symbol)}", f"it may be {low} to {with_unit(high, one.symbol)}"
            )
        return x

    def javascript(self) -> str:
        """A JavaScript function expression from the inputs in order, in SI, to the lines in order.

        It needs the functions of `javascript.OPERATIONS` in scope.
        """
        from bayleaf.formulas.output.javascript import function

        return function(len(self.inputs), len(self.lines) + len(self.requirements), self.assignments)
