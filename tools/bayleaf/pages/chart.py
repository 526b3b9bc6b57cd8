"""A chart as SVG text of our own: the same bytes every time, readable in light, dark and print, with its words beside it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from bayleaf.formulas import Calculator, curve
from bayleaf.pages.text import Markup, text
from bayleaf.pages.worked import name_words
from bayleaf.quantities import from_si, significant, to_si, with_unit

WIDTH, HEIGHT = 640, 380
LEFT, RIGHT, TOP, BOTTOM = 70, 130, 16, 52
POINTS = 61
DASHES = ("", "9 5", "2 4", "14 4 2 4", "5 3", "1 6")  # after these come the same ones, thinner
LABEL = 17  # the least distance between two labels at the end of the lines


@dataclass(frozen=True)
class Line:
    """One line of the chart: its label (in full, and its value alone) and its points in the units shown, broken where the result is undefined."""

    label: str
    short: str
    points: list[tuple[float, float]]


def chart(calc: Calculator) -> Markup:
    """The figure of a calculator's chart, '' when its record asks for none."""
    if not calc.chart:
        return Markup("")
    result = calc.results[calc.chart.get("result") or next(iter(calc.results))]
    across = calc.inputs[calc.chart["x"]]
    drawn = list(_lines(calc, result, across))
    xs, ys = [x for d in drawn for x, _ in d.points], [y for d in drawn for _, y in d.points]
    if not xs:
        return Markup("")
    x_ticks, y_ticks = ticks(min(xs), max(xs), 7), ticks(min(ys), max(ys), 6)
    title = f"{name_words(result.name)} over {name_words(across.name)}"
    label = " ".join(_sentence(d, across.symbol, result.symbol) for d in drawn)
    parts = [*_grid(x_ticks, y_ticks), *_names(_axis(across.name, across.symbol), _axis(result.name, result.symbol))]
    ends = (x_ticks[0], x_ticks[-1]), (y_ticks[0], y_ticks[-1])
    for i, one in enumerate(drawn):
        parts += _line(one, i, *ends)
    parts += _labels([d for d in drawn if d.points and d.label], *ends)
    svg = (f'<svg viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-label="{text(title)}" class="bl-chart">'
           f"<title>{text(title)}</title><desc>{text(label)}</desc>{''.join(parts)}</svg>")  # fmt: skip
    return Markup(f'<figure class="bl-figure">{svg}<figcaption>{text(label)}</figcaption></figure>')


def _axis(name: str, symbol: str) -> str:
    unit = with_unit("", symbol).strip()
    return f"{name_words(name)}, {unit}" if unit else name_words(name)


def _lines(calc: Calculator, result, across) -> Iterator[Line]:  # noqa: ANN001 - formulas.Result, formulas.Input
    name = calc.chart.get("lines")
    values = {**calc.table.get("rows", {}), **calc.table.get("columns", {})}.get(name, [None])
    for value in values:
        one = calc.inputs[name] if name else None
        given = {name: to_si(value, one.symbol, one.quantity.reference)} if one else {}
        points = [(from_si(x, across.symbol, across.quantity.reference), from_si(y, result.symbol, result.quantity.reference))
                  for x, y in curve(calc, result.name, across.name, POINTS, given) if math.isfinite(y)]  # fmt: skip
        short = with_unit(f"{value:g}", one.symbol) if one else ""
        yield Line(f"{name_words(name)} {short}" if one else "", short, points)


def ticks(low: float, high: float, most: int) -> list[float]:
    """Round numbers from at or below `low` to at or above `high`, at most about `most` of them."""
    span = (high - low) or abs(high) or 1.0
    rough = span / most
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(m * power for m in (1, 2, 5, 10) if m * power >= rough * (1 - 1e-9))
    first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    return [i * step for i in range(first, max(last, first + 1) + 1)]


def _place(value: float, ends: tuple[float, float], start: float, length: float) -> float:
    return start + (value - ends[0]) / (ends[1] - ends[0]) * length


def _x(value: float, ends: tuple[float, float]) -> float:
    return _place(value, ends, LEFT, WIDTH - LEFT - RIGHT)


def _y(value: float, ends: tuple[float, float]) -> float:
    return _place(value, ends, HEIGHT - BOTTOM, -(HEIGHT - TOP - BOTTOM))


def _grid(xs: list[float], ys: list[float]) -> Iterator[str]:
    right, bottom = WIDTH - RIGHT, HEIGHT - BOTTOM
    for value in xs:
        at = _x(value, (xs[0], xs[-1]))
        yield f'<line class="bl-grid" x1="{at:.1f}" y1="{TOP}" x2="{at:.1f}" y2="{bottom}"/>'
        yield f'<text x="{at:.1f}" y="{bottom + 18}" text-anchor="middle">{text(_number(value, xs))}</text>'
    for value in ys:
        at = _y(value, (ys[0], ys[-1]))
        yield f'<line class="bl-grid" x1="{LEFT}" y1="{at:.1f}" x2="{right}" y2="{at:.1f}"/>'
        yield f'<text x="{LEFT - 8}" y="{at + 4:.1f}" text-anchor="end">{text(_number(value, ys))}</text>'
    yield f'<path class="bl-axis" d="M{LEFT} {TOP}V{bottom}H{right}"/>'


def _number(value: float, all: list[float]) -> str:
    step = all[1] - all[0]
    return f"{value + 0.0:.{max(0, -math.floor(math.log10(step) + 1e-9))}f}"


def _names(across: str, up: str) -> Iterator[str]:
    yield f'<text class="bl-name" x="{(LEFT + WIDTH - RIGHT) / 2:.1f}" y="{HEIGHT - 10}" text-anchor="middle">{text(across)}</text>'
    middle = (TOP + HEIGHT - BOTTOM) / 2
    yield f'<text class="bl-name" x="16" y="{middle:.1f}" text-anchor="middle" transform="rotate(-90 16 {middle:.1f})">{text(up)}</text>'


def _line(one: Line, i: int, xs: tuple[float, float], ys: tuple[float, float]) -> Iterator[str]:
    if one.points:
        path = " ".join(f"{_x(x, xs):.1f},{_y(y, ys):.1f}" for x, y in one.points)
        dash = DASHES[i % len(DASHES)]
        yield (f'<polyline points="{path}"' + (f' stroke-dasharray="{dash}"' if dash else "")
               + (' class="bl-thin"' if i >= len(DASHES) else "") + "/>")  # fmt: skip


def _labels(drawn: list[Line], xs: tuple[float, float], ys: tuple[float, float]) -> Iterator[str]:
    """The value of each line at its end, pushed apart where lines end close together."""
    above = -math.inf
    for one in sorted(drawn, key=lambda d: -d.points[-1][1]):
        x, y = one.points[-1]
        above = max(_y(y, ys) + 4, above + LABEL)
        yield f'<text x="{_x(x, xs) + 6:.1f}" y="{above:.1f}">{text(one.short)}</text>'


def _sentence(one: Line, across: str, up: str) -> str:
    if not one.points:
        return ""
    (x1, y1), (x2, y2) = one.points[0], one.points[-1]
    start = f"{one.label}: " if one.label else ""
    return (f"{start}{with_unit(significant(y1, 3), up)} at {with_unit(significant(x1, 3), across)}, "
            f"{with_unit(significant(y2, 3), up)} at {with_unit(significant(x2, 3), across)}.")  # fmt: skip
