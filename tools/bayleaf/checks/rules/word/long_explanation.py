"""WORD-9: too much for the customer."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.prose.writing import words
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Symptoms and procedures."""
    count = words(record.data.get("explain", ""))
    if count > 60:
        yield RULE.at(record, f"explain has {count} words", path=("explain",))


RULE = Rule(
    code="WORD-9",
    level="error",
    scope="record",
    title="Too much for the customer",
    what="What is said to the customer has at most 60 words.",
    why="It is read aloud at the counter, and it must fit into one breath or two.",
    mend="Keep what was measured and what it means; leave out how.",
    example=Example(
        "symptoms/rough-idle.yaml",
        "explain: Your engine idles unevenly.",
        "explain: "
        "Your engine idles unevenly and we want to know why that is so. "
        "Your engine idles unevenly and we want to know why that is so. "
        "Your engine idles unevenly and we want to know why that is so. "
        "Your engine idles unevenly and we want to know why that is so. "
        "Your engine idles unevenly and we want to know why that is so. "
        "Your engine idles unevenly.",
    ),
    find=find,
    kinds=("symptoms", "procedures"),
)
