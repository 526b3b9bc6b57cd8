"""Formulas: a calculator's record to a proved calculator, its answers, its tables, its script and its print."""

from __future__ import annotations

from bayleaf.formulas.calculator.compile import compile_calculator
from bayleaf.formulas.calculator.model import Calculator, Constant, Input, Line, Result
from bayleaf.formulas.calculator.worked import Check, run_checks
from bayleaf.formulas.language.bounds import defined_everywhere
from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.ranges import Problem, prove_range
from bayleaf.formulas.output.javascript import script
from bayleaf.formulas.output.tabulate import Cell, Table, curve, named_results, span_of, tabulate
from bayleaf.formulas.output.typeset import Typeset, typeset

__all__ = [
    "Calculator",
    "Cell",
    "Check",
    "Constant",
    "FormulaError",
    "Input",
    "Line",
    "Problem",
    "Result",
    "Table",
    "Typeset",
    "compile_calculator",
    "curve",
    "defined_everywhere",
    "named_results",
    "prove_range",
    "run_checks",
    "script",
    "span_of",
    "tabulate",
    "typeset",
]
