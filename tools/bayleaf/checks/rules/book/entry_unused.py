"""BOOK-7: condition, connection, task or effect that nothing uses."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import KIND


def find(context: Context) -> Iterator[Finding]:
    """Any link from another record counts."""
    for kind in ("conditions", "states", "tasks", "effects"):
        for id, record in context.book.of(kind).items():
            if id not in context.references.named and (kind != "states" or record.data.get("connection")):
                yield RULE.at(record, f"nothing names the {KIND[kind].singular} {id}")


RULE = Rule(
    code="BOOK-7",
    level="warning",
    scope="book",
    title="Condition, connection, task or effect unused",
    what="Every condition, connection, task and effect of the vocabulary is named by something.",
    why=(
        "A connection that nothing makes serves no reading, and a condition that nothing is read in may be a slip"
        " for another."
    ),
    mend="Name it where it belongs, or delete it.",
    example=Example(
        "vocabulary/tasks.yaml",
        "measure-fuel-pressure:",
        "find-a-leak:\n  title: Find a leak\n  summary: Find where fuel leaves the car.\nmeasure-fuel-pressure:",
    ),
    find=find,
    excusable=True,
)
