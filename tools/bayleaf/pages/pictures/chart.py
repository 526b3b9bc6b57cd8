"""The chart of a calculator: what is drawn over what, and the same in words."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.formulas.calculator.model import Calculator, Input, Result
from bayleaf.formulas.output.tabulate import curve, named_results, span_of
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.parts.worked import name_words
from bayleaf.pages.pictures.plot import PHONE, SCREEN, Line, drawing
from bayleaf.quantities import from_si, significant, to_si, with_unit

POINTS = 61


def chart(calc: Calculator) -> Markup:
    """The figure of a calculator's chart, one drawing for wide screens and paper and one for a phone; '' when its record asks for none."""
    if not calc.chart:
        return Markup("")
    results = [calc.results[name] for name in named_results(calc, calc.chart)]
    x_input, unit = calc.inputs[calc.chart["x"]], results[0].symbol
    lines = [line for line in _lines(calc, results, x_input) if line.drawn]
    if not lines:
        return Markup("")
    several = len(results) > 1
    up = with_unit("", unit).strip() or "ratio" if several else _axis(results[0].name, unit)
    of = (
        f"lines: {_axis(calc.chart['lines'], calc.inputs[calc.chart['lines']].symbol)}" if "lines" in calc.chart else ""
    )
    title = f"{', '.join(name_words(r.name) for r in results)} over {name_words(x_input.name)}"
    sentences = " ".join(sentence(line, x_input.symbol, unit) for line in lines)
    svgs = "".join(
        drawing(lines, (_axis(x_input.name, x_input.symbol), up, of), (title, sentences), size)
        for size in (SCREEN, PHONE)
    )
    return Markup(f'<figure class="bl-figure">{svgs}<figcaption>{text(sentences)}</figcaption></figure>')


def _axis(name: str, symbol: str) -> str:
    unit = with_unit("", symbol).strip()
    return f"{name_words(name)}, {unit}" if unit else name_words(name)


def _lines(calc: Calculator, results: list[Result], x_input: Input) -> Iterator[Line]:
    """A line for each result, or of one result for each value of the input that gives lines."""
    if "lines" not in calc.chart:
        for result in results:
            name = name_words(result.name) if len(results) > 1 else ""
            yield Line(name, name, _points(calc, result, x_input, {}))
        return
    one = calc.inputs[calc.chart["lines"]]
    for value in {**calc.table.get("rows", {}), **calc.table.get("columns", {})}[one.name]:
        given = {one.name: to_si(value, one.symbol, one.quantity.reference)}
        yield Line(
            f"{name_words(one.name)} {with_unit(f'{value:g}', one.symbol)}",
            f"{value:g}",
            _points(calc, results[0], x_input, given),
        )


def _points(calc: Calculator, result: Result, x_input: Input, given: dict[str, float]) -> list[tuple[float, float]]:
    return [
        (from_si(x, x_input.symbol, x_input.quantity.reference), from_si(y, result.symbol, result.quantity.reference))
        for x, y in curve(calc, result.name, x_input.name, span_of(calc), POINTS, given)
    ]


def sentence(line: Line, x_unit: str, y_unit: str) -> str:
    """Where a line begins and ends, and where it turns if it does."""
    least = 1e-9 * max(abs(y) for _x, y in line.drawn)
    points = [(x, y if abs(y) > least else 0.0) for x, y in line.drawn]  # 3e-17 psi is a zero that went through SI
    low, high = (pick(points, key=lambda point: point[1]) for pick in (min, max))
    slack = 1e-9 * max(abs(low[1]), abs(high[1]))
    turns = [
        f"{name} {_at(point, x_unit, y_unit)}"
        for name, point in (("lowest", low), ("highest", high))
        if abs(point[1] - points[0][1]) > slack and abs(point[1] - points[-1][1]) > slack
    ]
    start = f"{line.label}: " if line.label else ""
    return start + ", ".join([_at(points[0], x_unit, y_unit), *turns, _at(points[-1], x_unit, y_unit)]) + "."


def _at(point: tuple[float, float], x_unit: str, y_unit: str) -> str:
    return f"{with_unit(significant(point[1], 3), y_unit)} at {with_unit(_short(point[0]), x_unit)}"


def _short(x: float) -> str:
    """A value of the axis, as short as people type it: 25, 43.5, 101.3."""
    shown = significant(x, 4)
    return shown.rstrip("0").rstrip(".") if "." in shown else shown
