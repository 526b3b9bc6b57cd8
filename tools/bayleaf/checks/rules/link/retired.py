"""LINK-3: retired record that is still named."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """A retired record may say what it liked."""
    if not context.references.retired or record.data.get("status") == "retired":
        return
    for link in context.references.links(record):
        if link.id in context.references.retired:
            after = context.references.retired[link.id].data.get("replaced_by")
            help = f"Name {after} instead." if after else ""
            yield RULE.at(record, f"{field(record, link.path)}: {link.id} is retired", help, link.path, link.key)


RULE = Rule(
    code="LINK-3",
    level="error",
    scope="record",
    title="Retired record that is still named",
    what="Nothing names a retired record but the records that are retired themselves.",
    why="It was taken out because it is wrong or has been replaced; whoever follows the link works by the old one.",
    mend="Name the record that replaced it.",
    example=Example("symptoms/rough-idle.yaml", "status: draft", "status: retired\nreplaced_by: loss-of-power"),
    find=find,
)
