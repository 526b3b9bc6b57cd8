"""BASIS-8: one source under two ids."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    """Compares the sound sources in the order of their list."""
    seen: dict[tuple, str] = {}
    for record in context.book.of("sources").values():
        if record.sound:
            mark = (record.title.lower(), record.data["issuer"].lower(), record.data["year"])
            if mark in seen:
                yield RULE.at(record, f"{record.id} is the same source as {seen[mark]}")
            seen.setdefault(mark, record.id)


RULE = Rule(
    code="BASIS-8",
    level="warning",
    scope="book",
    title="One source under two ids",
    what="A source has one entry: title, issuer and year are not found again in another.",
    why="Whether somebody had it open would be said in two places, and differently one day.",
    mend="Delete one of the two and let everything cite the other.",
    example=Example(
        "vocabulary/sources.yaml",
        "code-list:\n",
        (
            "unit-guide-again:\n"
            "  title: Guide to the units of the small book\n"
            "  issuer: Office of Examples\n"
            "  year: 2008\n"
            "  opened: false\n"
            "code-list:\n"
        ),
    ),
    find=find,
)
