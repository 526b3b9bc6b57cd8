"""Run every rule over a book."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from importlib import import_module
from pathlib import Path

from bayleaf.checks import rules
from bayleaf.checks.context import Context
from bayleaf.checks.exceptions import without_excepted
from bayleaf.checks.facts.amounts import ROLES
from bayleaf.checks.rule import Rule
from bayleaf.finding import Finding, reader_level
from bayleaf.records import KINDS, Book, Record


@cache
def all_rules() -> tuple[Rule, ...]:
    """All rules, by family and number."""
    folder = Path(rules.__file__).parent
    files = sorted(folder.glob("[!_]*/[!_]*.py"))
    every = [import_module(f"{rules.__name__}.{path.parent.name}.{path.stem}").RULE for path in files]
    return tuple(sorted(every, key=lambda rule: (rule.family, rule.number)))


def check(book: Book, replay: bool = False) -> list[Finding]:
    """What the reader and every rule find, in the order of the files; with `replay` every job is replayed too.

    Rules see sound records only. While some are not, the rules over the whole book and those of diagnosis wait, and a
    finding says so: what they would miss may stand in those records.
    """
    unsound = sum(not record.sound for record in book.records())
    sound = book.sound()
    context = Context(sound)
    wanted = [rule for rule in all_rules() if rule.find and (replay or rule.scope != "replay")]
    run = [rule for rule in wanted if not (unsound and _waits(rule))]
    findings = list(book.findings)
    if unsound:
        findings.append(_waiting(unsound))
    findings += _in_records(sound.records(), run, context)
    for rule in run:
        if rule.scope in ("book", "replay"):
            findings += _asked(rule, context)
    return _in_order(_without_excepted(sound.records(), findings, run))


def check_record(book: Book, record: Record) -> list[Finding]:
    """What the reader and the rules of records and values find in one record of a book; no rule over the whole book is asked."""
    run = [rule for rule in all_rules() if rule.find and rule.scope in ("record", "value")]
    findings = [finding for finding in book.findings if finding.file == record.file]
    if record.sound:
        findings += _in_records([record], run, Context(book.sound()))
        findings = _without_excepted([record], findings, run)
    return _in_order(findings)


def _without_excepted(records: Iterable[Record], findings: list[Finding], run: list[Rule]) -> list[Finding]:
    excusable = {rule.code for rule in all_rules() if rule.excusable}
    return without_excepted(records, findings, excusable, {rule.code for rule in run})


def _in_order(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(set(findings), key=Finding.order)


def _waits(rule: Rule) -> bool:
    return rule.scope in ("book", "replay") or rule.family == "DIAG"


def _waiting(unsound: int) -> Finding:
    many = "1 entry is" if unsound == 1 else f"{unsound} entries are"
    message = f"the rules over the whole book did not run, because {many} not sound"
    return Finding("BOOK-8", reader_level("BOOK-8"), message, "Mend the errors of files and shapes first.", "kb")


def _in_records(records: Iterable[Record], run: list[Rule], context: Context) -> list[Finding]:
    """What the rules of records and values find, record by record: what is looked up in a record serves every rule."""
    record_rules = {kind: [r for r in run if r.scope == "record" and r.asks(kind)] for kind in KINDS}
    value_rules = {
        (kind, role): [r for r in run if r.scope == "value" and r.asks(kind, role)] for kind in KINDS for role in ROLES
    }
    findings: list[Finding] = []
    for record in records:
        for rule in record_rules[record.kind]:
            findings += _asked(rule, record, context, record=record)
        for amount in context.amounts.of(record):
            for rule in value_rules[record.kind, amount.role]:
                findings += _asked(rule, amount, context, record=record)
    return findings


def _asked(rule: Rule, *about: object, record: Record | None = None) -> list[Finding]:
    """What one rule finds. A crash inside a rule is a finding of that rule, not the end of the run."""
    try:
        return list(rule.find(*about)) if rule.find else []
    except Exception as err:  # noqa: BLE001 - whatever one rule stumbles over, the others are to speak
        reason = re.sub(r"\s+", " ", str(err))[:120]
        message = f"this rule could not finish: {type(err).__name__}: {reason}"
        help = "This is a fault of the checker, not of the record; report it with the record."
        if record is not None:
            return [record.finding(rule.code, "error", message, help)]
        return [Finding(rule.code, "error", message, help, "kb")]
