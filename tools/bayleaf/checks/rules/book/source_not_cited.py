"""BOOK-3: source that nothing cites."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    """Any link to it counts, in a basis or in a text."""
    for id, record in context.book.of("sources").items():
        if id not in context.references.named:
            yield RULE.at(record, f"nothing cites {id}")


RULE = Rule(
    code="BOOK-3",
    level="warning",
    scope="book",
    title="Source that nothing cites",
    what="Every source in the list is the basis of something.",
    why="A source without a citation was meant for a number that now has none, or a wrong one.",
    mend="Cite it where it was used, or delete it.",
    example=Example("codes/p0171.yaml", "basis: {source: code-list, place: entry P0171}", "basis: {practice: true}"),
    find=find,
    excusable=True,
)
