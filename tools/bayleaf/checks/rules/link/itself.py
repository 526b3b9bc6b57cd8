"""LINK-10: record that names itself."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Links in fields only; a text may speak of its own record."""
    for link in context.references.links(record) if record.id in context.references.names(record) else ():
        if link.id == record.id and not link.prose and link.path[-1] != "calculator":
            yield RULE.at(record, f"{field(record, link.path)} names the record itself", path=link.path, key=link.key)


RULE = Rule(
    code="LINK-10",
    level="error",
    scope="record",
    title="Record that names itself",
    what=(
        "A record is not mistaken for itself, part of itself, of the type of itself, replaced by itself or undone"
        " by itself."
    ),
    why="It is a slip of copying: another id was meant.",
    mend="Name the record that was meant.",
    example=Example("systems/direct-injection.yaml", "{system: port-injection-return,", "{system: direct-injection,"),
    find=find,
)
