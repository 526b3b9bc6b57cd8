"""Calculators as the rules see them: proved once, and every complaint sorted to the rule that it belongs to."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from bayleaf.finding import Finding
from bayleaf.formulas.calculator.compile import compile_calculator
from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.calculator.worked import Check, run_checks
from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.grammar import parse
from bayleaf.records import Record

if TYPE_CHECKING:
    from bayleaf.checks.context import Context
    from bayleaf.checks.rule import Rule


class Proof:
    """One calculator: ready, or why not, with the code of the rule that says so ("" where another family says it)."""

    __slots__ = ("checks", "code", "error", "ready")

    def __init__(
        self,
        ready: Calculator | None = None,
        error: FormulaError | None = None,
        code: str = "",
        checks: tuple[Check, ...] = (),
    ) -> None:
        self.ready, self.error, self.code, self.checks = ready, error, code, checks


def prove(record: Record, context: Context) -> Proof:
    """Compile a sound calculator and run its worked checks."""
    try:
        proof = Proof(compile_calculator(record.data, context.quantities))
    except FormulaError as err:
        return Proof(error=err, code=_code(record, err))
    try:
        proof.checks = tuple(run_checks(proof.ready, record.data))
    except FormulaError as err:
        proof.error, proof.code = err, "CALC-6"
    return proof


def _code(record: Record, err: FormulaError) -> str:
    field, *rest = err.path or ("formula",)
    if field == "inputs":
        return "CALC-4" if len(rest) == 1 else "CALC-3" if rest[1] == "default" else ""
    if field == "requires":
        return "CALC-2"
    if field == "exclusive":
        return "CALC-4"
    if field == "constants":
        return "CALC-4" if len(rest) == 1 else ""
    if field == "result":
        return "CALC-4" if len(rest) == 1 else "CALC-2" if rest[1] == "quantity" else ""
    if field in ("table", "chart"):
        return "CALC-5"
    if not rest:
        return "CALC-1"
    try:
        parse(record.data["formula"][rest[0]])
    except FormulaError:
        return "CALC-1"
    return "CALC-2" if err.offset is not None else "CALC-4"


def told(rule: Rule, record: Record, context: Context) -> Iterator[Finding]:
    """What is wrong with a calculator, where that is the complaint of this rule."""
    proof = context.proof(record)
    if proof.code == rule.code:
        yield _say(rule, record, proof.error)


def _say(rule: Rule, record: Record, err: FormulaError) -> Finding:
    """A FormulaError as a finding of a rule, at the very part of the expression where the text shows it as written."""
    from bayleaf.checks.messages import field, sentence

    found = rule.at(record, f"{field(record, err.path)}: {err.message}", sentence(err.help), err.path)
    if err.offset is None:
        return found
    requires = err.path[0] == "requires"
    expression = (
        record.data["requires"][err.path[1]]["that"] if requires else record.data["formula"].get(err.path[1], "")
    )
    line = record.source.raw.decode("utf-8", "replace").split("\n")[found.line - 1 : found.line]
    quote = next((q for q in (0, 1) if line and line[0][found.column - 1 + q :].startswith(expression)), None)
    if quote is None:
        return found
    column = found.column + quote + err.offset
    return found._replace(column=column, end_column=column + max(err.length, 1))
