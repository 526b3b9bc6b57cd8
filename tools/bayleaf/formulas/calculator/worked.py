"""The worked checks of a calculator: published numbers that it must reproduce."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.language.errors import FormulaError
from bayleaf.quantities import QuantityError, from_si, to_si


class Check(NamedTuple):
    """One result of the check at `place` in the record, all numbers in `unit`; `got` is NaN where the calculator has no answer."""

    place: int
    line: str
    unit: str
    wanted: float
    got: float
    within: float
    ok: bool


def run_checks(calc: Calculator, data: Mapping[str, Any]) -> list[Check]:
    """Every check of the record, in order.

    Raises FormulaError with the field's path for an input or a result that does not exist, a unit that does not fit,
    an input outside its limits.
    """
    return [check for index, entry in enumerate(data["checks"]) for check in _run(calc, index, entry)]


def _run(calc: Calculator, index: int, entry: Mapping[str, Any]) -> list[Check]:
    given = {}
    for name, value in entry["given"].items():
        try:
            given[name] = calc.si(name, value["value"], value["unit"])
        except FormulaError as err:
            raise err.within(("checks", index, "given", name)) from None
    values = calc.filled(given)
    if wrong := calc.contradicted(list(values.values())):
        raise FormulaError(f"the check contradicts {wrong[0].text}", wrong[0].because, ("checks", index, "given"))
    if away := calc.rivals(values):
        raise FormulaError(f"{' and '.join(away)} exclude each other", "give one of them", ("checks", index, "given"))
    lines = calc.evaluate(given)
    return [_compare(calc, index, name, wanted, lines) for name, wanted in entry["gives"].items()]


def _compare(calc: Calculator, index: int, name: str, wanted: Mapping[str, Any], lines: Mapping[str, float]) -> Check:
    path = ("checks", index, "gives", name)
    if name not in calc.results:
        raise FormulaError(f"{name} is not a result", f"there are {', '.join(calc.results)}", path)
    quantity = calc.results[name].quantity
    try:
        symbol = quantity.symbol(wanted["unit"])
        within = quantity.width(wanted["within"]["value"], wanted["within"]["unit"])
    except QuantityError as err:
        raise FormulaError(err.message, err.help, path) from None
    off = abs(lines[name] - to_si(wanted["value"], symbol, quantity.reference))
    got = from_si(lines[name], symbol, quantity.reference)
    return Check(index, name, symbol, wanted["value"], got, from_si(within, symbol, "difference"), off <= within)
