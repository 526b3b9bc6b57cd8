"""WORD-10: word written twice."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_TWICE = re.compile(r"\b(?!that\b|had\b)([a-z]{2,}) \1\b")


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Small letters only, so that names such as `Pago Pago` pass."""
    for path, text in context.texts.with_match(record, _TWICE):
        match = _TWICE.search(text)
        if match:
            yield RULE.at(record, f"{field(record, path)} says {match[0]}", path=path)


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
    find=find,
    excusable=True,
)
