"""BASIS-5: reviewed value from a source that nobody opened."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every basis of a reviewed record."""
    for path, basis in context.references.bases(record) if record.data.get("status") == "reviewed" else ():
        source = context.book.of("sources").get(basis.get("source", ""))
        if source and source.sound and not source.data["opened"]:
            yield RULE.at(record, f"nobody had {source.id} open", path=(*path, "source"))


RULE = Rule(
    code="BASIS-5",
    level="advice",
    scope="record",
    title="Reviewed value from a source that nobody opened",
    what="A record that is marked reviewed rests on sources that somebody had open.",
    why="A value that was recalled may be right; a reviewed record should not depend on it.",
    mend="Open the source and say so in it, or leave the record a draft.",
    example=Example("codes/p0171.yaml", "status: draft", "status: reviewed"),
    find=find,
    excusable=True,
)
