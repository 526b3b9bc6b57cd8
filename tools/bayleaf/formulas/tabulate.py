"""A calculator over rows and columns, and along one input for a chart."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from bayleaf.formulas.calculator import Calculator, Input, Result
from bayleaf.quantities import to_si


@dataclass(frozen=True, slots=True)
class Cell:
    """One value: in SI, as text in the result's unit, and in the other system's unit ("" where both share one).

    `mark`: "" when it holds, "undefined", or "outside": an input outside its limits or a result that is not plausible.
    """

    x: float
    shown: str
    other: str
    mark: str


@dataclass(frozen=True, slots=True)
class Table:
    """Rows and columns as typed in their inputs' units; `cells` row by row. Without columns there is one."""

    result: Result
    rows: Input
    row_values: list[float]
    columns: Input | None
    column_values: list[float]
    cells: list[list[Cell]]


def tabulate(calc: Calculator, table: Mapping | None = None) -> Table:
    """The table of the record, or one of the same shape: {rows: {input: […]}, columns: {input: […]}, result: name}."""
    table = table or calc.table
    result = calc.results[table.get("result") or next(iter(calc.results))]
    (row, row_values), *_ = table["rows"].items()
    column, column_values = next(iter(table.get("columns", {}).items()), (None, [None]))
    names, at = list(calc.inputs), list(calc.lines).index(result.name)
    values, inside = [one.default for one in calc.inputs.values()], {}

    def put(name: str | None, typed: float | None) -> None:
        if name is not None:
            one = calc.inputs[name]
            x = values[names.index(name)] = to_si(typed, one.symbol, one.quantity.reference)
            inside[name] = one.low <= x <= one.high

    cells = []
    for row_value in row_values:
        put(row, row_value)
        cells.append([])
        for column_value in column_values:
            put(column, column_value)
            cells[-1].append(_cell(result, calc.run(values)[at], all(inside.values())))
    columns = calc.inputs[column] if column else None
    return Table(result, calc.inputs[row], list(row_values), columns, list(column_values) if column else [], cells)


def _cell(result: Result, x: float, inside: bool) -> Cell:
    if math.isnan(x):
        return Cell(x, result.text(x), "", "undefined")
    low, high = result.quantity.plausible
    other = result.text(x, result.other()) if result.other() else ""
    return Cell(x, result.text(x), other, "" if inside and low <= x <= high else "outside")


def curve(calc: Calculator, result: str, x: str, points: int = 41, given: Mapping[str, float] | None = None) -> list[tuple[float, float]]:
    """(input, result) pairs in SI, evenly over the limits of input `x`; others as `given` in SI or at their defaults."""
    one, at, names = calc.inputs[x], list(calc.lines).index(result), list(calc.inputs)
    values = [(given or {}).get(name, calc.inputs[name].default) for name in names]
    found = []
    for step in range(points):
        values[names.index(x)] = one.low + (one.high - one.low) * step / (points - 1)
        found.append((values[names.index(x)], calc.run(values)[at]))
    return found
