"""A calculator over rows and columns, and along one input for a chart."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, NamedTuple

from bayleaf.formulas.calculator.model import Calculator, Input, Result
from bayleaf.quantities import to_si


class Cell(NamedTuple):
    """One value: in SI, as text in the result's unit, and in the other system's unit ("" where both share one).

    `mark`: "" when it holds, "undefined", or "outside": an input outside its limits or a result that is not plausible.
    """

    x: float
    shown: str
    other: str
    mark: str


class Table(NamedTuple):
    """Rows and columns as typed in their inputs' units; `cells` row by row.

    `results`: one, in every cell; or several, one a column, and then there is no input across.
    """

    results: list[Result]
    rows: Input
    row_values: list[float]
    columns: Input | None
    column_values: list[float]
    cells: list[list[Cell]]


def tabulate(calc: Calculator, table: Mapping[str, Any] | None = None) -> Table:
    """The table of the record, or one of the same shape: {rows: {input: […]}, columns: {input: […]}, result: name} or {rows: …, results: […]}."""
    table = table or calc.table
    results = [calc.results[name] for name in named_results(calc, table)]
    (row, row_values), *_ = table["rows"].items()
    column, column_values = next(iter(table.get("columns", {}).items()), ("", ()))
    names, places = list(calc.inputs), [list(calc.lines).index(result.name) for result in results]
    values, inside = [one.default for one in calc.inputs.values()], {}

    def put(name: str, typed: float) -> None:
        one = calc.inputs[name]
        x = values[names.index(name)] = to_si(typed, one.symbol, one.quantity.reference)
        inside[name] = one.low <= x <= one.high

    def row_cells() -> list[Cell]:
        answers, held = calc.run(values), all(inside.values()) and not calc.contradicted(values)
        return [_cell(result, answers[place], held) for result, place in zip(results, places, strict=True)]

    cells: list[list[Cell]] = []
    for row_value in row_values:
        put(row, row_value)
        cells.append([] if column else row_cells())
        for column_value in column_values if column else ():
            put(column, column_value)
            cells[-1] += row_cells()
    columns = calc.inputs[column] if column else None
    return Table(results, calc.inputs[row], list(row_values), columns, list(column_values), cells)


def _cell(result: Result, x: float, inside: bool) -> Cell:
    if math.isnan(x):
        return Cell(x, result.text(x), "", "undefined")
    low, high = result.quantity.plausible
    other = result.text(x, result.other()) if result.other() else ""
    return Cell(x, result.text(x), other, "" if inside and low <= x <= high else "outside")


def named_results(calc: Calculator, shown: Mapping[str, Any]) -> list[str]:
    """The results that a table or a chart shows."""
    return list(shown.get("results", ())) or [shown.get("result") or next(iter(calc.results))]


def span_of(calc: Calculator) -> tuple[float, float]:
    """Over what the chart runs, in SI: the range that it states, or the values of its input in the table."""
    one = calc.inputs[calc.chart["x"]]
    values = {**calc.table.get("rows", {}), **calc.table.get("columns", {})}.get(one.name, ())
    typed = calc.chart["range"].values() if "range" in calc.chart else values
    low, high = (to_si(value, one.symbol, one.quantity.reference) for value in (min(typed), max(typed)))
    return low, high


def curve(
    calc: Calculator,
    result: str,
    x: str,
    span: tuple[float, float],
    points: int,
    given: Mapping[str, float] | None = None,
) -> list[tuple[float, float]]:
    """(input, result) pairs in SI, evenly over `span` of input `x`; others as `given` in SI or at their defaults."""
    at, names = list(calc.lines).index(result), list(calc.inputs)
    values = [(given or {}).get(name, calc.inputs[name].default) for name in names]
    pairs = []
    for step in range(points):
        values[names.index(x)] = span[0] + (span[1] - span[0]) * step / (points - 1)
        pairs.append((values[names.index(x)], calc.run(values)[at]))
    return pairs
