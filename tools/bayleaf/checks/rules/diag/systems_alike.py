"""DIAG-18: two systems of a family that recognition cannot tell apart."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    if record.data["family"] == "layer":
        return
    mine = mapped(record.data["shows"])
    for id, other in context.book.of("systems").items():
        if id == record.id:
            break
        theirs = mapped(other.data["shows"]) if other.sound and other.data["family"] == record.data["family"] else None
        if theirs is not None and not any(theirs.get(r, a) != a for r, a in mine.items()):
            message = f"no answer tells this system from {id}, of the same family"
            yield RULE.at(record, message, path=("shows",), key=True)


RULE = Rule(
    code="DIAG-18",
    level="warning",
    scope="record",
    kinds=("systems",),
    title="Systems that look alike",
    what="Any two systems of a family differ in at least one answer of `shows`.",
    why="Bands, relief and high side depend on the system. One that is taken for another is measured with the wrong gauge.",
    mend="Name a reading for recognition that they answer differently.",
    excusable=True,
    example=Example("systems/port-injection-return.yaml", "shows: {lines-at-rail: two}", "shows: {lines-at-rail: one}"),
    find=find,
)
