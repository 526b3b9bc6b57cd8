"""The browser's side of the arithmetic: a script that answers as the Python side does.

Everything is wrapped in one function, so that no name of a record becomes a name in the page.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from bayleaf.quantities import units

if TYPE_CHECKING:  # a calculator writes its script with this module
    from bayleaf.formulas.calculator.model import Calculator

# The operations of evaluate.py, by the same names.
OPERATIONS = """\
function keep(a) { return isFinite(a) ? a : NaN; }
function divide(a, b) { return b === 0 ? NaN : a / b; }
function power(a, b) { return isFinite(a) && isFinite(b) ? keep(Math.pow(a, b)) : NaN; }
function root(a) { return a >= 0 ? Math.sqrt(a) : NaN; }
function exponential(a) { return isFinite(a) ? keep(Math.exp(a)) : NaN; }
function logarithm(a) { return a > 0 && isFinite(a) ? Math.log(a) : NaN; }
function least(a, b) { return a !== a || b !== b ? NaN : a < b ? a : b; }
function most(a, b) { return a !== a || b !== b ? NaN : a > b ? a : b; }
function size(a) { return Math.abs(a); }
function below(a, b) { return a !== a || b !== b ? NaN : a < b ? 1 : 0; }
function at_most(a, b) { return a !== a || b !== b ? NaN : a <= b ? 1 : 0; }
function choose(test, one, other) { return test !== test ? NaN : test ? one : other; }
"""

# to_si, from_si and significant of bayleaf.quantities. A unit is [p, q, offset]: SI = value * p / q + offset.
CONVERSIONS = """\
function to_si(value, unit, reference) {
  var u = units[unit];
  return value * u[0] / u[1] + (reference === "absolute" ? u[2] : 0);
}
function from_si(x, unit, reference) {
  var u = units[unit];
  return (reference === "absolute" ? x - u[2] : x) * u[1] / u[0];
}
function significant(x, digits) {
  if (!isFinite(x)) { return "undefined"; }
  if (x === 0) { return "0"; }
  var rounded = x.toExponential(digits - 1);
  var exponent = Number(rounded.split("e")[1]);
  return Number(rounded).toFixed(Math.max(0, digits - 1 - exponent));
}
"""


def function(inputs: int, lines: int, assignments: list[str]) -> str:
    """A function expression from an array of inputs to an array of lines, both in SI."""
    steps = " ".join(f"{assignment};" for assignment in assignments)
    return (
        f"function (given) {{ var v = given.slice(0, {inputs}); {steps} return v.slice({inputs}, {inputs + lines}); }}"
    )


def unit_table(symbols: Iterable[str]) -> str:
    """The units as JSON for CONVERSIONS: {symbol: [p, q, offset]}."""
    table = {}
    for symbol in dict.fromkeys(symbols):
        unit = units()[symbol]
        table[symbol] = [unit.exact_factor.numerator, unit.exact_factor.denominator, unit.offset]
    return json.dumps(table, separators=(",", ":"))


def script(calculators: Mapping[str, Calculator], name: str = "bayleaf") -> str:
    """A whole script that sets one global: {to_si, from_si, significant, run: {id: function}}.

    `calculators`: id to Calculator. The units are those that their inputs and results accept.
    """
    symbols: list[str] = []
    runs = []
    for id, calc in calculators.items():
        for quantity in (*(i.quantity for i in calc.inputs.values()), *(r.quantity for r in calc.results.values())):
            symbols += quantity.symbols()
        runs.append(f"{json.dumps(id)}: {calc.javascript()}")
    inside = f'"use strict";\n{OPERATIONS}var units = {unit_table(symbols)};\n{CONVERSIONS}'
    answer = "return {to_si: to_si, from_si: from_si, significant: significant, run: {\n" + ",\n".join(runs) + "\n}};"
    return f"var {name} = (function () {{\n{inside}{answer}\n}})();\n"
