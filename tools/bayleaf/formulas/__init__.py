"""Formulas: parse, prove dimensions and references, evaluate, tabulate, typeset, and the same in JavaScript."""

from __future__ import annotations

from bayleaf.formulas.calculator import Calculator, Constant, Input, Line, Result
from bayleaf.formulas.compile import compile_calculator
from bayleaf.formulas.errors import FormulaError
from bayleaf.formulas.javascript import script
from bayleaf.formulas.ranges import Problem, prove_range
from bayleaf.formulas.tabulate import Cell, Table, curve, named_results, span_of, tabulate
from bayleaf.formulas.typeset import Typeset, typeset
from bayleaf.formulas.worked import Check, run_checks

__all__ = [
    "Calculator", "Cell", "Check", "Constant", "FormulaError", "Input", "Line", "Problem", "Result", "Table", "Typeset",
    "compile_calculator", "curve", "named_results", "prove_range", "run_checks", "script", "span_of", "tabulate", "typeset",
]  # fmt: skip
