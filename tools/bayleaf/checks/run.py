"""Run every rule over a book in one walk by scope."""

from __future__ import annotations

import importlib
import pkgutil
import re
from functools import cache

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Rule
from bayleaf.finding import Finding
from bayleaf.records import KINDS, Book, Record, listed


@cache
def all_rules() -> tuple[Rule, ...]:
    """All rules, by family and number."""
    folder = importlib.import_module("bayleaf.checks.rules")
    found = [importlib.import_module(f"{folder.__name__}.{m.name}").RULE for m in pkgutil.iter_modules(folder.__path__)]
    return tuple(sorted(found, key=lambda r: (r.code.rsplit("-", 1)[0], int(r.code.rsplit("-", 1)[1]))))


def check(book: Book) -> list[Finding]:
    """What the reader found and what every rule finds, in the order of the files.

    Rules see sound records only. While some are not, the rules over the whole book and those of diagnosis wait, and a
    finding says so: what they would miss may stand in those records.
    """
    unsound = sum(not record.sound for record in book.records())
    sound = book.sound()
    context = Context(sound)
    run = [rule for rule in all_rules() if rule.check and not (unsound and _waits(rule))]
    by_kind = {kind: [r for r in run if r.scope == "record" and (not r.kinds or kind in r.kinds)] for kind in KINDS}
    values = [r for r in run if r.scope == "value"]
    found: list[Finding] = list(book.findings)
    if unsound:
        words = f"{sum(map(_waits, all_rules()))} rules over the whole book did not run, because {unsound} {'entry is' if unsound == 1 else 'entries are'} not sound"
        found.append(Finding("BOOK-8", "advice", words, "Mend the errors of files and shapes first.", "kb"))
    for record in sound.records():
        for rule in by_kind[record.kind]:
            try:
                found.extend(rule.check(record, context))
            except Exception as err:  # noqa: BLE001 - whatever it is, the other rules must still run
                found.append(_crashed(rule, err, record))
        for site in context.sites(record):
            for rule in values:
                try:
                    found.extend(rule.check(site, context))
                except Exception as err:  # noqa: BLE001
                    found.append(_crashed(rule, err, record))
    for rule in [r for r in run if r.scope == "book"]:
        try:
            found.extend(rule.check(context))
        except Exception as err:  # noqa: BLE001
            found.append(_crashed(rule, err))
    found = _excepted(sound, found, {rule.code for rule in run})
    return sorted(set(found), key=Finding.order)


def _waits(rule: Rule) -> bool:
    return rule.check is not None and (rule.scope == "book" or rule.code.startswith("DIAG-"))


def _crashed(rule: Rule, err: Exception, record: Record | None = None) -> Finding:
    """A crash inside a rule is a finding of that rule, not the end of the run."""
    said = re.sub(r"\s+", " ", str(err))[:120]
    message = f"this rule could not finish: {type(err).__name__}: {said}"
    help = "This is a fault of the checker, not of the record; report it with the record."
    if record is not None:
        return record.finding(rule.code, "error", message, help)
    return Finding(rule.code, "error", message, help, "kb")


def _excepted(book: Book, found: list[Finding], ran: set[str]) -> list[Finding]:
    """Leave out what a record excepts with a reason; an exception that is not needed is itself an error."""
    excusable = {r.code for r in all_rules() if r.excusable}
    silenced: set[int] = set()
    extra: list[Finding] = []
    for record in book.records():
        for i, exception in enumerate(listed(record.data.get("exceptions"))):
            code, field = exception["rule"], exception.get("field")
            hits = [n for n, f in enumerate(found) if f.record == record.id and f.code == code
                    and (field is None or field in ".".join(map(str, f.path)))]  # fmt: skip
            path = ("exceptions", i, "rule")
            if code not in excusable:
                extra.append(record.finding("BOOK-2", "error", f"{code} cannot be excepted", "Mend the record; only some rules take a reason.", path))
            elif not hits and code in ran:
                extra.append(record.finding("BOOK-1", "error", f"the exception from {code} is no longer needed", "Delete it.", path))
            else:
                silenced.update(hits)
    return [f for n, f in enumerate(found) if n not in silenced] + extra
