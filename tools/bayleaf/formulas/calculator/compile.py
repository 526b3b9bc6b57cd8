"""A calculator's record to a proved Calculator."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import Any, TypeVar

from bayleaf.formulas.calculator.model import Calculator, Constant, Input, Line, Requirement, Result
from bayleaf.formulas.language.errors import FieldPath, FormulaError
from bayleaf.formulas.language.grammar import parse
from bayleaf.formulas.language.names import all_used, names_apart, near, ordered
from bayleaf.formulas.language.proof import prove
from bayleaf.formulas.language.tree import Node, cost, nodes
from bayleaf.formulas.language.types import Type
from bayleaf.formulas.output.shown import fits
from bayleaf.quantities import Quantity, QuantityError, to_si

MAX_LINES = 40
MAX_COST = 2000

_Answer = TypeVar("_Answer")


def compile_calculator(data: Mapping[str, Any], quantities: Mapping[str, Quantity]) -> Calculator:
    """The Calculator of a record whose shape is sound.

    Raises FormulaError, with the field's path and the offset in the expression, for the first thing that is wrong:
    grammar, limits, names, circles, unused parts, dimensions, references, units, results.
    """
    inputs = {name: _input(name, entry, quantities) for name, entry in data["inputs"].items()}
    constants = {name: _constant(name, entry, quantities) for name, entry in data.get("constants", {}).items()}
    trees = _trees(data["formula"])
    names_apart(inputs, constants, trees)
    known = {name: _type(one.quantity) for name, one in inputs.items()}
    known |= {name: _type(one.quantity) for name, one in constants.items()}
    lines = {}
    for name in ordered(trees, known):
        type, plain = _said_of(("formula", name), prove, trees[name], known)
        known[name] = type
        lines[name] = Line(name, data["formula"][name], trees[name], plain, type)
    results = {name: _result(name, entry, lines, quantities) for name, entry in data["result"].items()}
    requirements = [_requirement(place, entry, known) for place, entry in enumerate(data.get("requires", ()))]
    all_used(inputs, constants, lines, [*results, *(name for one in requirements for name in one.names)])
    exclusive = [_exclusive(place, names, inputs) for place, names in enumerate(data.get("exclusive", ()))]
    table, chart = data.get("table") or {}, data.get("chart") or {}
    fits(table, chart, inputs, results)
    ready = Calculator(data["title"], inputs, constants, lines, results, table, chart, requirements, exclusive)
    defaults = ready.filled({})
    for one in ready.contradicted(list(defaults.values())):
        place = requirements.index(one)
        raise FormulaError(f"the defaults contradict {one.text}", "move a default", ("requires", place, "that"))
    if away := ready.rivals(defaults):
        raise FormulaError(f"the defaults of {' and '.join(away)} exclude each other", "set one to 0", ("exclusive",))
    return ready


def _requirement(place: int, entry: Mapping[str, Any], known: Mapping[str, Type]) -> Requirement:
    """A comparison, proved as the test of a choice between 1 and 0."""
    path = ("requires", place, "that")
    tree = _said_of(path, parse, entry["that"])
    if tree.kind not in ("<", "<=", ">", ">="):
        raise FormulaError(f"{entry['that']} compares nothing", "write it as low < high", path)
    choice = Node("if", (tree, Node("number", (), "1"), Node("number", (), "0")))
    _, plain = _said_of(path, prove, choice, known)
    names = tuple(dict.fromkeys(part.text for part in nodes(tree) if part.kind == "name" and part.text != "pi"))
    return Requirement(entry["that"], entry["because"], plain, names)


def _exclusive(place: int, names: Sequence[str], inputs: Mapping[str, Input]) -> tuple[str, ...]:
    for i, name in enumerate(names):
        if name not in inputs:
            raise FormulaError(f"{name} is no input", near(name, inputs), ("exclusive", place, i))
        if not inputs[name].low <= 0 <= inputs[name].high:
            raise FormulaError(f"{name} cannot stand at 0", "move its limits", ("exclusive", place, i))
    return tuple(names)


def _type(quantity: Quantity) -> Type:
    return Type(quantity.dimension, quantity.reference)


def _said_of(path: FieldPath, function: Callable[..., _Answer], *given: object) -> _Answer:
    """The function's answer; its complaint said of a field."""
    try:
        return function(*given)
    except FormulaError as err:
        raise err.within(path) from None


def _quantity(path: FieldPath, id: str, quantities: Mapping[str, Quantity]) -> Quantity:
    if id not in quantities:
        raise FormulaError(f"there is no quantity {id}", near(id, quantities), (*path, "quantity"))
    return quantities[id]


def _symbol(path: FieldPath, quantity: Quantity, spelling: str) -> str:
    try:
        return quantity.symbol(spelling)
    except QuantityError as err:
        raise FormulaError(err.message, err.help, (*path, "unit")) from None


def _input(name: str, entry: Mapping[str, Any], quantities: Mapping[str, Quantity]) -> Input:
    path = ("inputs", name)
    quantity = _quantity(path, entry["quantity"], quantities)
    symbol = _symbol(path, quantity, entry["unit"])
    typed = (entry["default"], entry["min"], entry["max"])
    default, low, high = (to_si(value, symbol, quantity.reference) for value in typed)
    if not low < high:
        raise FormulaError(f"min {entry['min']} is not below max {entry['max']}", "exchange them", (*path, "min"))
    if not low <= default <= high:
        raise FormulaError(
            f"the default {entry['default']} is outside its limits", "move it between them", (*path, "default")
        )
    for side, value in (("min", low), ("max", high)):
        if not quantity.plausible[0] <= value <= quantity.plausible[1]:
            raise FormulaError(
                f"{entry[side]} {symbol} is not plausible for {quantity.title.lower()}",
                "move it inside the quantity's limits",
                (*path, side),
            )
    whole = entry.get("whole", False)
    if whole and any(value != round(value) for value in typed):
        raise FormulaError(
            f"{name} is counted, and its numbers are not whole", "write whole numbers", (*path, "default")
        )
    return Input(name, quantity, symbol, default, low, high, typed, whole)


def _constant(name: str, entry: Mapping[str, Any], quantities: Mapping[str, Quantity]) -> Constant:
    path = ("constants", name)
    quantity = _quantity(path, entry["quantity"], quantities)
    symbol = _symbol(path, quantity, entry["unit"])
    value = to_si(entry["value"], symbol, quantity.reference)
    if not quantity.plausible[0] <= value <= quantity.plausible[1]:
        raise FormulaError(
            f"{entry['value']} {symbol} is not plausible for {quantity.title.lower()}",
            "check the number and its unit, or name a wider quantity",
            (*path, "value"),
        )
    return Constant(name, quantity, symbol, value, entry["value"])


def _trees(formula: Mapping[str, str]) -> dict[str, Node]:
    if len(formula) > MAX_LINES:
        raise FormulaError(f"more than {MAX_LINES} lines", "make two calculators of it", ("formula",))
    trees = {name: _said_of(("formula", name), parse, text) for name, text in formula.items()}
    if sum(map(cost, trees.values())) > MAX_COST:
        raise FormulaError(f"over {MAX_COST} operations", "make two calculators of it", ("formula",))
    return trees


def _result(
    name: str, entry: Mapping[str, Any], lines: Mapping[str, Line], quantities: Mapping[str, Quantity]
) -> Result:
    path = ("result", name)
    if name not in lines:
        raise FormulaError(f"no line is called {name}", near(name, lines), path)
    quantity = _quantity(path, entry["quantity"], quantities)
    symbol = _symbol(path, quantity, entry["unit"])
    actual, wanted = lines[name].type, _type(quantity)
    if actual.dimension != wanted.dimension or actual.reference not in (wanted.reference, "free"):
        raise FormulaError(
            f"{name} comes out as {actual}, but {quantity.title.lower()} is {wanted}",
            "mend the formula or name another quantity",
            (*path, "quantity"),
        )
    says = tuple(
        (to_si(one["below"], symbol, quantity.reference) if "below" in one else math.inf, one["words"])
        for one in entry.get("says", ())
    )
    if says and sorted({limit for limit, _ in says}) != [limit for limit, _ in says]:
        raise FormulaError(f"the words of {name} are not in order", "write each below: above the one before it", path)
    if says and says[-1][0] != math.inf:
        raise FormulaError(f"the last words of {name} have a limit", "leave its below: away", path)
    return Result(name, quantity, symbol, entry["digits"], says)
