"""A proof by interval arithmetic that no line of a calculator is undefined anywhere inside its limits.

Every line gets an interval that holds all its values, rounding included. Where an interval cannot rule out a division
by 0, a root of a negative, a logarithm of 0 or an overflow, nothing is proved; that does not mean that it happens.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import product

from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.language.tree import Node, number

Interval = tuple[float, float]
_ROUNDING = 1e-12  # far more than a step of the arithmetic can be off, in share of what it is made of
_LEAST, _MOST = 1e-200, 1e200  # what is nearer to 0 might be lost, what is greater might overflow


class _Unproved(Exception):
    pass


def defined_everywhere(calc: Calculator) -> bool:
    """Whether it is proved that every line is defined for all inputs inside their limits."""
    known: dict[str, Interval] = {name: (one.low, one.high) for name, one in calc.inputs.items()}
    known |= {name: (one.value, one.value) for name, one in calc.constants.items()}
    known["pi"] = (math.pi, math.pi)
    try:
        for name, line in calc.lines.items():
            known[name] = _of(line.plain, known)
    except _Unproved:
        return False
    return True


def _of(node: Node, known: dict[str, Interval]) -> Interval:
    """All values of an expression; raises _Unproved where it might have none."""
    if node.kind == "number":
        return (x := float(number(node.text)), x)
    if node.kind == "name":
        return known[node.text]
    args = [_of(arg, known) for arg in node.args]
    a, b = args[0], args[-1]
    match node.kind:
        case "neg":
            return -a[1], -a[0]
        case "+":
            return _sum(a, b)
        case "-":
            return _sum(a, (-b[1], -b[0]))
        case "*":
            return _ends(x * y for x, y in product(a, b))
        case "/":
            b = _apart_from_0(b)
            return _ends(x / y for x, y in product(a, b))
        case "**":
            return _power(a, b)
        case "sqrt":
            return _ends(map(math.sqrt, _at_least(a, 0.0)))
        case "log":
            return _ends(map(math.log, _at_least(a, _LEAST)))
        case "exp":
            return _ends(map(math.exp, a)) if a[1] < math.log(_MOST) else _give_up()
        case "abs":
            return (0.0 if a[0] < 0 < a[1] else min(map(abs, a)), max(map(abs, a)))
        case "min":
            return min(x for x, _ in args), min(y for _, y in args)
        case "max":
            return max(x for x, _ in args), max(y for _, y in args)
        case "if":
            return min(x for x, _ in args[1:]), max(y for _, y in args[1:])
    return 0.0, 1.0  # a comparison


def _give_up() -> Interval:
    raise _Unproved


def _ends(values: Iterable[float]) -> Interval:
    """The least and the greatest, a little apart, each on its side of 0."""
    known = list(values)
    low, high = min(known), max(known)
    if max(abs(low), abs(high)) > _MOST:
        raise _Unproved
    return low - _ROUNDING * abs(low), high + _ROUNDING * abs(high)


def _sum(a: Interval, b: Interval) -> Interval:
    """A sum of two that are both above 0 stays there; else what is left of two large values may be all rounding."""
    low, high = _ends((a[0] + b[0], a[1] + b[1]))
    slack = _ROUNDING * max(map(abs, (*a, *b)))
    return low if a[0] >= 0 and b[0] >= 0 else low - slack, high if a[1] <= 0 and b[1] <= 0 else high + slack


def _at_least(a: Interval, least: float) -> Interval:
    return a if a[0] >= least else _give_up()


def _apart_from_0(a: Interval) -> Interval:
    return a if a[0] >= _LEAST or a[1] <= -_LEAST else _give_up()


def _power(a: Interval, b: Interval) -> Interval:
    """Above 0 the extremes stand at the corners; below it an exponent must be a whole number."""
    whole = b[0] == b[1] and b[0].is_integer()
    if a[0] < _LEAST and not ((a[0] >= 0 and b[0] > 0) or (whole and (b[0] >= 1 or a[1] <= -_LEAST))):
        raise _Unproved
    try:
        corners = [math.pow(x, y) for x, y in product(a, b)]
    except (OverflowError, ValueError):
        raise _Unproved from None
    return _ends([*corners, 0.0] if a[0] < 0 < a[1] else corners)
