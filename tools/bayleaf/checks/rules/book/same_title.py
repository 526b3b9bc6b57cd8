"""BOOK-5: two records of one kind with one title."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import KINDS


def find(context: Context) -> Iterator[Finding]:
    """The later in the order of the files is named; case does not count."""
    for kind in KINDS:
        seen: dict[str, str] = {}
        for id, record in context.book.of(kind).items():
            other = seen.setdefault(record.title.lower(), id)
            if other != id and record.sound:
                yield RULE.at(record, f"{other} has the same title", path=("title",))


RULE = Rule(
    code="BOOK-5",
    level="error",
    scope="book",
    title="Two records of one kind with one title",
    what="The titles of a kind differ.",
    why="In a list or in the search they are one and the same.",
    mend="Say in the title what tells them apart.",
    example=Example("components/feed-pump.yaml", "title: Feed pump", "title: In-tank pump"),
    find=find,
)
