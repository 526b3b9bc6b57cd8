"""Run every rule over a book in one walk by scope."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache
from importlib import import_module
from pathlib import Path

from bayleaf.checks import rules
from bayleaf.checks.context import Context
from bayleaf.checks.facts.amounts import ROLES
from bayleaf.checks.rule import Rule
from bayleaf.finding import Finding
from bayleaf.records import KINDS, Book, Record, listed

Asked = list[tuple[Rule, Callable]]


@cache
def all_rules() -> tuple[Rule, ...]:
    """All rules, by family and number."""
    folder = Path(rules.__file__).parent
    files = sorted(folder.glob("[!_]*/[!_]*.py"))
    found = [import_module(f"{rules.__name__}.{path.parent.name}.{path.stem}").RULE for path in files]
    return tuple(sorted(found, key=lambda r: (r.code.rsplit("-", 1)[0], int(r.code.rsplit("-", 1)[1]))))


def check(book: Book, replay: bool = False) -> list[Finding]:
    """What the reader found and what every rule finds, in the order of the files; with `replay` every job is replayed too.

    Rules see sound records only. While some are not, the rules over the whole book and those of diagnosis wait, and a
    finding says so: what they would miss may stand in those records.
    """
    unsound = sum(not record.sound for record in book.records())
    sound = book.sound()
    context = Context(sound)
    wanted = [rule for rule in all_rules() if rule.check and (replay or rule.scope != "replay")]
    run = [rule for rule in wanted if not (unsound and _waits(rule))]
    by_kind, values = _of_records(run)
    found: list[Finding] = list(book.findings)
    if unsound:
        many = "1 entry is" if unsound == 1 else f"{unsound} entries are"
        words = f"the rules over the whole book did not run, because {many} not sound"
        found.append(Finding("BOOK-8", "advice", words, "Mend the errors of files and shapes first.", "kb"))
    for record in sound.records():
        found += _in(record, by_kind[record.kind], values[record.kind], context)
    for rule in [r for r in run if r.scope in ("book", "replay")]:
        try:
            found.extend(rule.check(context))
        except Exception as err:
            found.append(_crashed(rule, err))
    found = _excepted(sound.records(), found, {rule.code for rule in run})
    return sorted(set(found), key=Finding.order)


def check_record(book: Book, record: Record) -> list[Finding]:
    """What the reader and the rules of records and values find in one record of a book; no rule over the whole book is asked."""
    run = [rule for rule in all_rules() if rule.check and rule.scope in ("record", "value")]
    by_kind, values = _of_records(run)
    found = [f for f in book.findings if f.file == record.file]
    if record.sound:
        found += _in(record, by_kind[record.kind], values[record.kind], Context(book.sound()))
        found = _excepted([record], found, {rule.code for rule in run})
    return sorted(set(found), key=Finding.order)


def _of_records(run: list[Rule]) -> tuple[dict[str, Asked], dict[str, dict[str, Asked]]]:
    """(record rules by kind, value rules by kind and role), each with its function."""
    records, numbers = ([r for r in run if r.scope == scope] for scope in ("record", "value"))
    by_role = {kind: {role: [(r, r.check) for r in numbers if r.asks(kind, role)] for role in ROLES} for kind in KINDS}
    return {kind: [(r, r.check) for r in records if r.asks(kind)] for kind in KINDS}, by_role


def _in(record: Record, rules: Asked, values: dict[str, Asked], context: Context) -> list[Finding]:
    """What the rules of a record's kind, and those of values by role, find in it."""
    found: list[Finding] = []
    add = found.extend
    for rule, ask in rules:
        try:
            add(ask(record, context))
        except Exception as err:
            found.append(_crashed(rule, err, record))
    for amount in context.amounts(record):
        for rule, ask in values[amount.role]:
            try:
                add(ask(amount, context))
            except Exception as err:
                found.append(_crashed(rule, err, record))
    return found


def _waits(rule: Rule) -> bool:
    return rule.scope in ("book", "replay") or rule.code.startswith("DIAG-")


def _crashed(rule: Rule, err: Exception, record: Record | None = None) -> Finding:
    """A crash inside a rule is a finding of that rule, not the end of the run."""
    said = re.sub(r"\s+", " ", str(err))[:120]
    message = f"this rule could not finish: {type(err).__name__}: {said}"
    help = "This is a fault of the checker, not of the record; report it with the record."
    if record is not None:
        return record.finding(rule.code, "error", message, help)
    return Finding(rule.code, "error", message, help, "kb")


def _excepted(records: Iterable[Record], found: list[Finding], ran: set[str]) -> list[Finding]:
    """Leave out what one of the records excepts with a reason; an exception that is not needed is itself an error."""
    excusable = {r.code for r in all_rules() if r.excusable}
    silenced: set[int] = set()
    extra: list[Finding] = []
    for record in records:
        for i, exception in enumerate(listed(record.data.get("exceptions"))):
            code, field = exception["rule"], exception.get("field")
            hits = [
                n
                for n, f in enumerate(found)
                if f.record == record.id and f.code == code and (field is None or field in ".".join(map(str, f.path)))
            ]
            path = ("exceptions", i, "rule")
            if code not in excusable:
                extra.append(
                    record.finding(
                        "BOOK-2",
                        "error",
                        f"{code} cannot be excepted",
                        "Mend the record; only some rules take a reason.",
                        path,
                    )
                )
            elif not hits and code in ran:
                extra.append(
                    record.finding(
                        "BOOK-1", "error", f"the exception from {code} is no longer needed", "Delete it.", path
                    )
                )
            else:
                silenced.update(hits)
    return [f for n, f in enumerate(found) if n not in silenced] + extra
