"""The table of a calculator, on its own page and wherever it is embedded."""

from __future__ import annotations

from bayleaf.formulas.calculator.model import Calculator, Input, Result
from bayleaf.formulas.output.tabulate import Cell, tabulate
from bayleaf.pages.building.amounts import typed
from bayleaf.pages.building.blocks import blocks, para, table
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small, span, strong
from bayleaf.pages.building.text import Markup
from bayleaf.quantities import show, to_si, with_unit
from bayleaf.records import Record


def name_words(name: str) -> str:
    """The name of an input, a constant or a line as people read it."""
    return name.replace("_", " ")


def value_table(record: Record, calc: Calculator) -> Markup:
    """Rows and columns in both systems' units; what lies outside the limits is marked and explained."""
    values = tabulate(calc)
    columns, several = values.columns, len(values.results) > 1
    head: list[object] = [inline(name_words(values.rows.name), " \u2193")]
    if columns:
        head[0] = lines([inline(name_words(columns.name), " \u2192"), head[0]])
        head += [_said(record, columns, "columns", i) for i in range(len(values.column_values))]
    else:
        head += [inline(name_words(result.name), _sides(result)) for result in values.results]
    rows = [
        [_said(record, values.rows, "rows", i), *(_cell(cell) for cell in row)] for i, row in enumerate(values.cells)
    ]
    marks = {cell.mark for row in values.cells for cell in row}
    result = values.results[0]
    notes: list[object] = [
        inline("Cells: ", name_words(result.name), _sides(result), ".") if columns else EMPTY,
        _others(record, calc, values.rows, columns),
    ]
    notes.append("* outside the stated limits or not plausible: do not use it." if "outside" in marks else EMPTY)
    css = "bl-values" if columns or several else "bl-values bl-single"
    return blocks(table(head, rows, css=css), para(small(joined(notes, " "))))


def _sides(result: Result) -> Markup:
    """The unit of a result, and in brackets that of the other system."""
    sides = [with_unit("", symbol).strip() for symbol in (result.symbol, result.other()) if symbol and symbol != "1"]
    return small(f" in {sides[0]}", f" ({sides[1]})" if len(sides) > 1 else "") if sides else EMPTY


def _said(record: Record, one: Input, side: str, i: int) -> Markup:
    """A value of a row or a column as typed, and on the other side."""
    value = record.data["table"][side][one.name][i]
    written = typed(record, ("table", side, one.name, i))
    first, bracket, rest = show(
        to_si(value, one.symbol, one.quantity.reference), one.quantity, unit=one.symbol, written=written
    ).partition(" (")
    return joined([strong(first), small(bracket.strip(), rest)], "<br>" if side == "columns" else " ")


def _cell(cell: Cell) -> Markup:
    shown = inline(cell.shown, small(f" ({cell.other})") if cell.other else EMPTY)
    return span("bl-outside", shown, " *") if cell.mark == "outside" else shown


def _others(record: Record, calc: Calculator, *used: Input | None) -> Markup:
    """Where the inputs stand that the table does not move."""
    moved = {one.name for one in used if one}
    still = [
        f"{name_words(name)} {with_unit(typed(record, ('inputs', name, 'default')), one.symbol)}"
        for name, one in calc.inputs.items()
        if name not in moved
    ]
    return inline("Worked out with ", joined(still), ".") if still else EMPTY
