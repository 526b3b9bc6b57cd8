"""Calculators as the rules see them: proved once, and every complaint sorted to the rule that it belongs to."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from bayleaf.checks.messages import field, sentence
from bayleaf.checks.rule import Rule
from bayleaf.diagnosis.verdicts.compute import Desk
from bayleaf.finding import Finding
from bayleaf.formulas.calculator.compile import compile_calculator
from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.calculator.worked import Check, run_checks
from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.grammar import parse
from bayleaf.formulas.language.ranges import Problem, prove_range
from bayleaf.records import Record

# A check must stay fast: it tries the corners, the middles, the table and this many points; the tests try many more.
INSIDE = 60
CORNERS = 729  # three values for each of six inputs


class Proof(NamedTuple):
    """One calculator: ready, or why not, with the code of the rule that says so ("" where another family says it)."""

    ready: Calculator | None = None
    error: FormulaError | None = None
    code: str = ""
    checks: tuple[Check, ...] = ()


class Calculators:
    """The calculators of one book, each compiled and proved once."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self._proofs: dict[str, Proof] = {}
        self._problems: dict[str, list[Problem]] = {}

    def proof(self, record: Record) -> Proof:
        """A sound calculator, compiled, with its worked checks."""
        if record.id not in self._proofs:
            self._proofs[record.id] = self._prove(record)
        return self._proofs[record.id]

    def problems(self, record: Record) -> list[Problem]:
        """Where a calculator fails inside its limits; nothing for one that does not compile."""
        if record.id not in self._problems:
            ready = self.proof(record).ready
            self._problems[record.id] = prove_range(ready, INSIDE, CORNERS) if ready else []
        return self._problems[record.id]

    def _prove(self, record: Record) -> Proof:
        try:
            ready = compile_calculator(record.data, self.desk.quantities)
        except FormulaError as err:
            return Proof(error=err, code=_code(record, err))
        try:
            return Proof(ready, checks=tuple(run_checks(ready, record.data)))
        except FormulaError as err:
            return Proof(ready, err, "CALC-6")


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


def complaint(rule: Rule, record: Record, calculators: Calculators) -> Iterator[Finding]:
    """What is wrong with a calculator, where that is for this rule to say."""
    proof = calculators.proof(record)
    if proof.error is not None and proof.code == rule.code:
        yield _finding(rule, record, proof.error)


def _finding(rule: Rule, record: Record, err: FormulaError) -> Finding:
    """A FormulaError as a finding of a rule, at the very part of the expression where the text shows it as written."""
    finding = rule.at(record, f"{field(record, err.path)}: {err.message}", sentence(err.help), err.path)
    if err.offset is None:
        return finding
    required = err.path[0] == "requires"
    expression = (
        record.data["requires"][err.path[1]]["that"] if required else record.data["formula"].get(err.path[1], "")
    )
    line = record.source.raw.decode("utf-8", "replace").split("\n")[finding.line - 1 : finding.line]
    quote = next((q for q in (0, 1) if line and line[0][finding.column - 1 + q :].startswith(expression)), None)
    if quote is None:
        return finding
    column = finding.column + quote + err.offset
    return finding._replace(column=column, end_column=column + max(err.length, 1))
