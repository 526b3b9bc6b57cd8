"""WORD-12: web address in a text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.prose.writing import texts_of
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_ADDRESS = re.compile(r"\b(?:[a-z]{2,8}://|www\.)\S+", re.IGNORECASE)


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Any text of any field."""
    seen = f"{record.title} {record.data.get('also_called')} {context.texts.all_prose(record)}"
    if "www." not in seen and "://" not in seen:
        return
    for path, text in texts_of(record.data):
        match = _ADDRESS.search(text)
        if match:
            yield RULE.at(record, f"{field(record, path)} holds the address {match[0][:40]}", path=path)


RULE = Rule(
    code="WORD-12",
    level="error",
    scope="record",
    title="Web address in a text",
    what="A text holds no address of the web; the book works without a network and names its sources by id.",
    why="An address leads out of what was checked, and is gone in a few years.",
    mend="Name the source in kb/vocabulary/sources.yaml and cite its id.",
    example=Example(
        "components/fuel-filter.yaml",
        "fails: [Blocks slowly with dirt.]",
        'fails: ["Blocks slowly with dirt, see www.example.org."]',
    ),
    find=find,
)
