"""What others say a calculator must give: libraries and printed tables, each named, and how far we are from them.

    @against("coil-resistance", "Copper Wire Tables, rule of the inferred zero", rel=2e-4)
    def _(at_20, temperature):                     # inputs in SI, by their names in the record
        return {"resistance": …}                   # results in SI, or as a pint quantity

    published("wire-drop", "Copper Wire Tables", rel=6e-4, rows=[({"gauge_number": "10"}, {"diameter": "0.1019 in"})])

A function is asked at random points inside the limits and at every worked check of the record.
"""

from __future__ import annotations

import importlib
import inspect
import pkgutil
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import pint

from bayleaf.formulas.calculator.compile import compile_calculator
from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.language.errors import FormulaError
from bayleaf.quantities import from_si, quantities_of, read_value, to_si
from bayleaf.records import Book, load

ROOT = Path(__file__).resolve().parents[3]
PINT = pint.UnitRegistry()
_WORDS = {"%": "percent", "1": "", "delta_degC": "delta_degree_Celsius", "inH2O": "inH2O", "mohm": "milliohm"}
OUTSIDES: list[Outside] = []


@dataclass(frozen=True)
class Outside:
    """One comparison. `rel` is the greatest relative error allowed; below `floor` (SI) the error counts against it."""

    calculator: str
    source: str
    rel: float
    function: Callable[..., dict] | None = None
    rows: list[tuple[dict, dict]] = field(default_factory=list)
    maker: Callable[[], Iterator[tuple[dict, dict]]] | None = None
    points: int = 200
    floor: float = 0.0
    limits: dict[str, tuple[float, float]] = field(default_factory=dict)

    def pairs(self) -> Iterator[tuple[dict, dict]]:
        """(inputs in SI, results as the outside gives them)."""
        calc = calculator(self.calculator)
        for given, gives in self.rows:
            yield _read(calc.inputs, given), _read(calc.results, gives)
        yield from self.maker() if self.maker else ()
        if self.function:
            names = list(inspect.signature(self.function).parameters)
            for given in (*_random(calc, self), *_checks(calc, self)):
                yield given, self.function(**{name: given[name] for name in names})

    def worst(self) -> tuple[int, float]:
        """How many values were compared, and the greatest relative error."""
        calc, count, worst = calculator(self.calculator), 0, 0.0
        for given, gives in self.pairs():
            lines = calc.evaluate(given)
            for name, wanted in gives.items():
                got, expected = lines[name], wanted
                if isinstance(wanted, PINT.Quantity):
                    result = calc.results[name]
                    got = from_si(got, result.symbol, result.quantity.reference)
                    expected = _magnitude(wanted, result.symbol)
                error = abs(got - expected) / max(abs(expected), self.floor) if got != expected else 0.0
                assert error == error, f"{self.calculator}: {name} is undefined at {given}"
                count, worst = count + 1, max(worst, error)
        return count, worst


def against(calculator: str, source: str, rel: float = 1e-9, points: int = 200, floor: float = 0.0, **limits):
    """Register a function of the inputs in SI. `limits`: {input: (low, high)} in its own unit, where it is narrower."""

    def register(function: Callable[..., dict]) -> Callable[..., dict]:
        OUTSIDES.append(Outside(calculator, source, rel, function, points=points, floor=floor, limits=limits))
        return function

    return register


def published(calculator: str, source: str, rel: float, rows: list[tuple[dict, dict]], floor: float = 0.0) -> None:
    """Register rows of a printed table: inputs and results as text with units."""
    OUTSIDES.append(Outside(calculator, source, rel, rows=rows, floor=floor))


def made(calculator: str, source: str, rel: float):
    """Register a generator of (inputs in SI, results in SI), for what is made backwards from the result."""

    def register(function: Callable[[], Iterator[tuple[dict, dict]]]) -> Callable:
        OUTSIDES.append(Outside(calculator, source, rel, maker=function))
        return function

    return register


@cache
def book() -> Book:
    """The project's records."""
    return load(ROOT)


@cache
def calculator(id: str) -> Calculator:
    """A calculator of the project, proved."""
    return compile_calculator(book().of("calculators")[id].data, quantities_of(book()))


def results(id: str, **texts: str) -> dict[str, float]:
    """A calculator's results in their own units; inputs as text with units, the others at their defaults."""
    calc = calculator(id)
    lines = calc.evaluate(_read(calc.inputs, texts))
    return {name: from_si(lines[name], one.symbol, one.quantity.reference) for name, one in calc.results.items()}


def everything() -> list[Outside]:
    """All comparisons of the modules beside this one."""
    if not OUTSIDES:
        for module in pkgutil.iter_modules([str(Path(__file__).parent)]):
            importlib.import_module(f"{__name__}.{module.name}")
    return sorted(OUTSIDES, key=lambda one: (one.calculator, one.source))


def _read(parts: dict, texts: dict[str, str]) -> dict[str, float]:
    given = {}
    for name, text in texts.items():
        value, symbol = read_value(text, parts[name].quantity)
        given[name] = to_si(value, symbol, parts[name].quantity.reference)
    return given


def _random(calc: Calculator, outside: Outside) -> Iterator[dict[str, float]]:
    dice = random.Random(outside.calculator)
    for _ in range(outside.points):
        yield {name: dice.uniform(*_limits(one, outside)) for name, one in calc.inputs.items()}


def _checks(calc: Calculator, outside: Outside) -> Iterator[dict[str, float]]:
    """The worked checks that lie inside the limits."""
    for check in book().of("calculators")[outside.calculator].data["checks"]:
        given = {name: one.default for name, one in calc.inputs.items()}
        try:
            given |= {name: calc.si(name, typed["value"], typed["unit"]) for name, typed in check["given"].items()}
        except FormulaError as err:
            raise AssertionError(f"{outside.calculator}: {err}") from None
        limits = {name: _limits(one, outside) for name, one in calc.inputs.items()}
        if all(limits[name][0] <= x <= limits[name][1] for name, x in given.items()):
            yield given


def _limits(one, outside: Outside) -> tuple[float, float]:
    if one.name not in outside.limits:
        return one.low, one.high
    low, high = outside.limits[one.name]
    return tuple(to_si(side, one.symbol, one.quantity.reference) for side in (low, high))


def _magnitude(wanted: pint.Quantity, symbol: str) -> float:
    return wanted.m_as(_WORDS.get(symbol, symbol))
