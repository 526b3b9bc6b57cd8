"""Exceptions: findings that a record leaves out on purpose, each with its reason."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.checks.messages import either, field
from bayleaf.finding import Finding, reader_level
from bayleaf.records import Record

NOT_NEEDED, NOT_EXCUSABLE = "BOOK-1", "BOOK-2"


def without_excepted(
    records: Iterable[Record], findings: list[Finding], excusable: set[str], ran: set[str]
) -> list[Finding]:
    """Leave out what one of the records excepts; an exception that cannot be, or that nothing needs, is itself an error."""
    silenced: set[int] = set()
    wrong: list[Finding] = []
    for record in records:
        exceptions = record.data.get("exceptions", [])
        own = [(n, finding) for n, finding in enumerate(findings) if finding.record == record.id] if exceptions else []
        for i, exception in enumerate(exceptions):
            code, path = exception["rule"], ("exceptions", i, "rule")
            of_rule = [(n, finding) for n, finding in own if finding.code == code]
            hits = {n for n, finding in of_rule if exception.get("field") in (None, field(record, finding.path))}
            if code not in excusable:
                help = "Mend the record; only some rules take a reason."
                wrong.append(
                    record.finding(NOT_EXCUSABLE, reader_level(NOT_EXCUSABLE), f"{code} cannot be excepted", help, path)
                )
            elif hits or code not in ran:
                silenced |= hits
            else:
                wrong.append(_not_needed(record, i, [finding for _n, finding in of_rule]))
    return [finding for n, finding in enumerate(findings) if n not in silenced] + wrong


def _not_needed(record: Record, index: int, elsewhere: list[Finding]) -> Finding:
    """Nothing of the rule stands in this field, or nothing at all in the record."""
    exception = record.data["exceptions"][index]
    if not elsewhere:
        message = f"the exception from {exception['rule']} is no longer needed"
        return record.finding(
            NOT_NEEDED, reader_level(NOT_NEEDED), message, "Delete it.", ("exceptions", index, "rule")
        )
    fields = either(dict.fromkeys(field(record, finding.path) for finding in elsewhere))
    message = f"{exception['rule']} finds nothing in the field {exception['field']!r}"
    help = f"Write field: {fields}, as findings name it, or leave the field out for the whole record."
    return record.finding(NOT_NEEDED, reader_level(NOT_NEEDED), message, help, ("exceptions", index, "field"))
