"""Over the stated ranges a calculator stays defined; at its defaults and over its table its results are plausible.

Where it cannot be proved that a calculator is defined everywhere (see bounds), it is tried: at every corner and middle
of the ranges, and at points spread evenly over the inside (a Kronecker sequence: the same points every time, no chance
in it). The defaults and the cells of the table are always worked out.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import chain, islice, product
from typing import NamedTuple

from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.language.bounds import defined_everywhere
from bayleaf.quantities import Quantity, from_si, to_si

MAX_CORNERS = 6561  # three values for each of eight inputs
INSIDE = 500


class Problem(NamedTuple):
    """A line that fails somewhere: `what` is "undefined" or "not plausible", `x` its value in SI.

    `given`: the inputs in SI that show it; `inputs`: the same in words, "boost 45 psi, barometer 60 kPa".
    """

    line: str
    what: str
    x: float
    given: dict[str, float]
    inputs: str


def prove_range(calc: Calculator, inside: int = INSIDE, corners: int = MAX_CORNERS) -> list[Problem]:
    """The first failure of each line, in the order of the lines; empty when the calculator holds.

    `inside`: how many points are spread over the inside of the ranges, beside corners, middles and table.
    `corners`: where corners and middles would be more than this, the corners alone are tried.
    """
    problems: dict[str, Problem] = {}
    usual = list(_cells(calc))
    limits = [
        (index, *_limits(calc.results[line].quantity)) for index, line in enumerate(calc.lines) if line in calc.results
    ]
    for index, values in enumerate(chain(usual, () if defined_everywhere(calc) else _points(calc, inside, corners))):
        got = calc.run(values)
        total = sum(got)
        if total == total and (index >= len(usual) or all(low <= got[i] <= high for i, low, high in limits)):
            continue  # a sum with an undefined part would be undefined
        for line, x in zip(calc.lines, got, strict=True):
            what = "undefined" if math.isnan(x) else _not_plausible(calc, line, x) if index < len(usual) else ""
            if what and line not in problems:
                given = dict(zip(calc.inputs, values, strict=True))
                problems[line] = Problem(line, what, x, given, _in_words(calc, given))
            if math.isnan(x):
                break  # what follows from an undefined line is no news
    return [problems[line] for line in calc.lines if line in problems]


def _not_plausible(calc: Calculator, line: str, x: float) -> str:
    if line not in calc.results:
        return ""
    low, high = _limits(calc.results[line].quantity)
    return "" if low <= x <= high else "not plausible"


def _limits(quantity: Quantity) -> tuple[float, float]:
    """The plausible limits, and the last bits of the arithmetic, which are not a finding."""
    low, high = quantity.plausible
    slack = 1e-12 * max(abs(low), abs(high))
    return low - slack, high + slack


def _points(calc: Calculator, inside: int, corners: int) -> Iterator[list[float]]:
    sides = [dict.fromkeys((one.low, one.default, one.high)) for one in calc.inputs.values()]
    if 3 ** len(sides) <= corners:
        yield from map(list, product(*sides))
    else:
        yield from map(list, islice(product(*((one.low, one.high) for one in calc.inputs.values())), MAX_CORNERS))
    steps = [math.sqrt(prime) % 1 for prime in _primes(len(sides))]
    for index in range(1, inside + 1):
        yield [
            one.low + (one.high - one.low) * (index * step % 1)
            for one, step in zip(calc.inputs.values(), steps, strict=True)
        ]


def _cells(calc: Calculator) -> Iterator[list[float]]:
    yield [one.default for one in calc.inputs.values()]
    sides = []
    for name, one in calc.inputs.items():
        typed = calc.table.get("rows", {}).get(name) or calc.table.get("columns", {}).get(name)
        values = [to_si(value, one.symbol, one.quantity.reference) for value in typed or ()]
        sides.append([x for x in values if one.low <= x <= one.high] or [one.default])
    yield from map(list, product(*sides))


def _primes(count: int) -> list[int]:
    primes: list[int] = []
    candidate = 2
    while len(primes) < count:
        if all(candidate % prime for prime in primes):
            primes.append(candidate)
        candidate += 1
    return primes


def _in_words(calc: Calculator, given: dict[str, float]) -> str:
    said = []
    for name, x in given.items():
        one = calc.inputs[name]
        number = f"{from_si(x, one.symbol, one.quantity.reference):.6g}"
        said.append(f"{name} {number}" + ("" if one.symbol == "1" else f" {one.symbol}"))
    return ", ".join(said)
