"""Lines drawn as SVG text of our own: the same bytes every time, and colours that follow the page, light, dark or paper."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from bayleaf.pages.building.text import text
from bayleaf.pages.pictures.axis import number, ticks
from bayleaf.pages.pictures.labels import Label, laid_out

FONT = 13
WIDE = 0.6 * FONT  # of a letter: more than most take, so that nothing is cut off
DASHES = ("", "9 5", "2 4", "14 4 2 4", "5 3", "1 6")  # after these come the same ones, thinner
ROWS = 1.2 * FONT  # from one line of words to the next


@dataclass(frozen=True)
class Line:
    """One line of a chart: its label in full and short, and its points in the units shown; y is not finite where the result is undefined."""

    label: str
    short: str
    points: list[tuple[float, float]]

    @property
    def drawn(self) -> list[tuple[float, float]]:
        """The points that can be drawn."""
        return [(x, y) for x, y in self.points if math.isfinite(y)]


@dataclass(frozen=True)
class Size:
    """The drawing in its own units: its width and height, how many marks an axis has at most, how long a line of a label is."""

    css: str
    width: int
    height: int
    marks: tuple[int, int]
    letters: int


SCREEN = Size("bl-wide", 640, 380, (7, 6), 18)
PHONE = Size("bl-narrow", 350, 330, (4, 6), 11)


@dataclass(frozen=True)
class Field:
    """Where the axes lie in a drawing, and what they hold: (low, high) of x and of y."""

    left: float
    right: float
    top: float
    bottom: float
    xs: tuple[float, float]
    ys: tuple[float, float]

    def x(self, value: float) -> float:
        """Across, in the drawing's units."""
        return self.left + (value - self.xs[0]) / (self.xs[1] - self.xs[0]) * (self.right - self.left)

    def y(self, value: float) -> float:
        """Down, in the drawing's units."""
        return self.bottom - (value - self.ys[0]) / (self.ys[1] - self.ys[0]) * (self.bottom - self.top)


def drawing(lines: Sequence[Line], names: tuple[str, str, str], said: tuple[str, str], size: Size) -> str:
    """The SVG of lines that have at least one point each.

    `names`: of the axis along the bottom, of the one upward, and of what the labels are values of ('' where they say it
    themselves). `said`: title and text alternative.
    """
    points = [point for line in lines for point in line.drawn]
    low, high = min(x for x, _ in points), max(x for x, _ in points)
    marks_y = ticks(min(y for _, y in points), max(y for _, y in points), size.marks[1])
    marks_x = ticks(low, high, size.marks[0], inside=True)
    numbers = [number(value, marks_y) for value in marks_y]
    labels = [wrapped(line.short, size.letters) for line in lines]
    beside = (
        18 + WIDE * max(len(row) for rows in labels for row in rows)
        if any(labels)
        else 5 + WIDE * max(len(number(value, marks_x)) for value in marks_x) / 2
    )
    top = 2.5 * FONT if names[2] else FONT
    field = Field(
        FONT + 16 + WIDE * max(map(len, numbers)),
        size.width - beside,
        top,
        size.height - 3.6 * FONT,
        (low, high),
        (marks_y[0], marks_y[-1]),
    )
    parts = [*_grid(field, marks_x, marks_y), *_names(field, size, *names)]
    for i, line in enumerate(lines):
        parts.append(_curve(field, line, i))
    parts += _labels(field, lines, labels, top - FONT)
    return (
        f'<svg viewBox="0 0 {size.width} {size.height}" role="img" aria-label="{text(said[0])}" class="bl-chart {size.css}">'
        f"<title>{text(said[0])}</title><desc>{text(said[1])}</desc>{''.join(parts)}</svg>"
    )


def wrapped(label: str, letters: int) -> list[str]:
    """Words in rows of at most so many letters; a longer word stays whole."""
    rows: list[str] = []
    for word in label.split():
        if rows and len(rows[-1]) + 1 + len(word) <= letters:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return rows


def _grid(field: Field, marks_x: list[float], marks_y: list[float]) -> Iterator[str]:
    for value in marks_x:
        at = field.x(value)
        yield f'<line class="bl-grid" x1="{at:.1f}" y1="{field.top:.1f}" x2="{at:.1f}" y2="{field.bottom:.1f}"/>'
        yield f'<text x="{at:.1f}" y="{field.bottom + 1.3 * FONT:.1f}" text-anchor="middle">{text(number(value, marks_x))}</text>'
    for value in marks_y:
        at = field.y(value)
        yield f'<line class="bl-grid" x1="{field.left:.1f}" y1="{at:.1f}" x2="{field.right:.1f}" y2="{at:.1f}"/>'
        yield f'<text x="{field.left - 6:.1f}" y="{at + FONT / 3:.1f}" text-anchor="end">{text(number(value, marks_y))}</text>'
    yield f'<path class="bl-axis" d="M{field.left:.1f} {field.top:.1f}V{field.bottom:.1f}H{field.right:.1f}"/>'


def _names(field: Field, size: Size, x_name: str, y_name: str, of: str) -> Iterator[str]:
    if of:
        yield f'<text class="bl-name" x="{size.width - 2}" y="{FONT}" text-anchor="end">{text(of)}</text>'
    yield f'<text class="bl-name" x="{size.width / 2:.1f}" y="{size.height - FONT / 2:.1f}" text-anchor="middle">{text(x_name)}</text>'
    middle = (field.top + field.bottom) / 2
    yield f'<text class="bl-name" x="{FONT}" y="{middle:.1f}" text-anchor="middle" transform="rotate(-90 {FONT} {middle:.1f})">{text(y_name)}</text>'


def _curve(field: Field, line: Line, i: int) -> str:
    """One path, broken where the result is undefined."""
    path, pen = "", "M"
    for x, y in line.points:
        if math.isfinite(y):
            path, pen = f"{path}{pen}{field.x(x):.1f} {field.y(y):.1f}", "L"
        else:
            pen = "M"
    dash = DASHES[i % len(DASHES)]
    return (
        f'<path class="bl-curve{" bl-thin" if i >= len(DASHES) else ""}" d="{path}"'
        + (f' stroke-dasharray="{dash}"' if dash else "")
        + "/>"
    )


def _labels(field: Field, lines: Sequence[Line], rows_of: list[list[str]], top: float) -> Iterator[str]:
    """What each line is, right of the field, with a thin line to its end where it had to give way."""
    ends = [line.drawn[-1] for line in lines]
    labels = [Label(field.y(y), _high(rows)) for (_x, y), rows in zip(ends, rows_of, strict=True)]
    for (x, y), rows, edge in zip(ends, rows_of, laid_out(labels, top, field.bottom + FONT / 3), strict=True):
        at, middle = field.right + 12, edge + ROWS * len(rows) / 2
        if rows and (abs(middle - field.y(y)) > 2 or field.x(x) < field.right - 1):
            yield f'<path class="bl-leader" d="M{field.x(x):.1f} {field.y(y):.1f}L{at - 3:.1f} {middle:.1f}"/>'
        for i, row in enumerate(rows):
            yield f'<text x="{at:.1f}" y="{edge + ROWS * (i + 1) - FONT / 4:.1f}">{text(row)}</text>'


def _high(rows: list[str]) -> float:
    """A label of several rows keeps a little away from the next, so that both can be told apart."""
    return ROWS * len(rows) + (FONT / 3 if len(rows) > 1 else 0)
