"""WORD-3: long sentence."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.prose.writing import sentences, words
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

MOST = 25  # words


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every sentence of every text but the steps; reports the longest of a field."""
    for path, text in context.texts.prose(record):
        if len(text) > 2 * MOST and text.count(" ") >= MOST and path[-1] not in ("do", "working"):
            most = max((words(s) for s in sentences(text)), default=0)
            if most > MOST:
                yield RULE.at(record, f"{field(record, path)} has a sentence of {most} words", path=path)


RULE = Rule(
    code="WORD-3",
    level="warning",
    scope="record",
    title="Long sentence",
    what="A sentence outside the steps has at most 25 words.",
    why="Half of the readers read in their second language.",
    mend="Cut it at the comma where the second thought begins.",
    example=Example(
        "components/fuel-filter.yaml",
        "found: Under the floor between tank and engine.",
        "found: Under the floor between tank and engine on most cars, but on many newer ones it is a part of the module in the tank and cannot be bought alone.",
    ),
    find=find,
    excusable=True,
)
