"""WORD-10: word written twice."""

from __future__ import annotations

import re
from collections.abc import Iterator
from operator import eq

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.prose.signs import words_of
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_TWICE = re.compile(r"\b(?!that\b|had\b)([a-z]{2,}) \1\b")


def check(record: Record, context: Context) -> Iterator[Finding]:
    """Small letters only, so that names such as `Pago Pago` pass."""
    for path, text in (
        context.prose(record) if _may(context.words(record)) or not context.plain_prose(record).isascii() else ()
    ):
        match = _TWICE.search(text) if _may(words_of(text)) or not text.isascii() else None
        if match:
            yield RULE.at(record, f"{field(record, path)} says {match[0]}", path=path)


def _may(words: list[bytes]) -> bool:
    """A first look, much faster than the pattern: whether any word is like the next one."""
    return any(map(eq, words, words[1:]))


RULE = Rule(
    code="WORD-10",
    level="warning",
    scope="record",
    title="Word written twice",
    what="A word does not stand twice in a row.",
    why="It is a slip, and the reader stops at it.",
    mend="Delete one of the two.",
    example=Example(
        "components/fuel-filter.yaml",
        "fails: [Blocks slowly with dirt.]",
        "fails: [Blocks slowly with with dirt.]",
    ),
    check=check,
    excusable=True,
)
