"""What the table and the chart of a record speak of: every name exists, and what is drawn together can be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bayleaf.formulas.calculator.model import Input, Result
from bayleaf.formulas.language.errors import FieldPath, FormulaError
from bayleaf.formulas.language.names import near

MAX_CELLS = 2000
MAX_CURVES = 10  # more cannot be told apart on paper, nor their labels set beside each other on a phone


def fits(
    table: Mapping[str, Any], chart: Mapping[str, Any], inputs: Mapping[str, Input], results: Mapping[str, Result]
) -> None:
    """Raises FormulaError, with the field's path, for the first thing in the table or the chart that does not fit."""
    if table:
        _table(table, inputs, results)
    if chart:
        _chart(chart, table, inputs, results)


def _table(table: Mapping[str, Any], inputs: Mapping[str, Input], results: Mapping[str, Result]) -> None:
    cells = 1
    for field in ("rows", "columns"):
        for name, values in table.get(field, {}).items():
            _one_of(name, inputs, ("table", field, name))
            cells *= len(values)
        if len(table.get(field, {})) > 1:
            raise FormulaError("more than one input on one side of the table", "leave one", ("table", field))
    if cells > MAX_CELLS:
        raise FormulaError(f"a table of {cells} cells", f"{MAX_CELLS} is the most", ("table",))
    if set(table.get("rows", {})) & set(table.get("columns", {})):
        raise FormulaError("one input on both sides of the table", "choose two", ("table", "columns"))
    _results("table", table, "columns", results)


def _chart(
    chart: Mapping[str, Any], table: Mapping[str, Any], inputs: Mapping[str, Input], results: Mapping[str, Result]
) -> None:
    sides = {**table.get("rows", {}), **table.get("columns", {})}
    for key in ("x", "lines"):
        if key in chart:
            _one_of(chart[key], inputs, ("chart", key))
    if "lines" in chart and chart["lines"] not in sides:
        raise FormulaError(
            f"{chart['lines']} has no values in the table", "the chart takes its lines from it", ("chart", "lines")
        )
    _results("chart", chart, "lines", results)
    units = {results[name].symbol for name in chart.get("results", ())}
    if len(units) > 1:
        raise FormulaError(
            f"results in {' and in '.join(sorted(units))} on one chart",
            "give them one unit, or draw fewer",
            ("chart", "results"),
        )
    curves = len(chart.get("results", sides.get(chart.get("lines"), ())))
    if curves > MAX_CURVES:
        raise FormulaError(f"a chart of {curves} lines", f"{MAX_CURVES} is the most", ("chart",))
    _range(chart, inputs[chart["x"]], sides.get(chart["x"], ()))


def _range(chart: Mapping[str, Any], x: Input, values: Sequence[float]) -> None:
    """The chart runs over the values of the table, unless it says over what."""
    if "range" not in chart:
        if len(values) < 2:
            raise FormulaError(
                f"{x.name} has no values in the table", "write range: with min and max in its unit", ("chart", "x")
            )
        return
    low, high = chart["range"]["min"], chart["range"]["max"]
    _default, least, most = x.typed
    if not low < high:
        raise FormulaError(f"min {low} is not below max {high}", "exchange them", ("chart", "range", "min"))
    for side, value in chart["range"].items():
        if not least <= value <= most:
            raise FormulaError(
                f"{value} is outside the limits of {x.name}", f"it may be {least} to {most}", ("chart", "range", side)
            )


def _results(field: str, shown: Mapping[str, Any], other: str, results: Mapping[str, Result]) -> None:
    """One result, or several that then take the place of the second input."""
    if "results" not in shown:
        if "result" in shown or len(results) > 1:
            _one_of(shown.get("result"), results, (field, "result"))
        return
    for i, name in enumerate(shown["results"]):
        _one_of(name, results, (field, "results", i))
    for rival in ("result", other):
        if rival in shown:
            raise FormulaError(f"results and {rival} together", "leave one", (field, rival))


def _one_of(name: str | None, known: Mapping[str, object], path: FieldPath) -> None:
    if name is None:
        raise FormulaError(
            "which result is meant is not said", f"write result: with one of {', '.join(known)}", path[:1]
        )
    if name not in known:
        raise FormulaError(f"there is no {name} here", near(name, known), path)
