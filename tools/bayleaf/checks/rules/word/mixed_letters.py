"""WORD-11: letters of two alphabets in one word."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.prose.writing import texts_of
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_WORD = re.compile(r"[^\W\d_]{2,}")
_LATIN = re.compile(r"[A-Za-z]")
_OTHER = re.compile(r"[\u0370-\u03a8\u03aa-\u03bb\u03bd-\u1fff\u2c80-\u2dff\ua640-\ua69f\uff21-\uff5a]")


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Only where a file holds anything but ASCII. Signs such as Ω and µ stand before a unit or alone, and pass."""
    if context.texts.all_prose(record).isascii() and record.title.isascii() and record.kind != "quantities":
        return
    for path, text in texts_of(record.data):
        for word in _WORD.findall(text) if not text.isascii() else ():
            if not word.isascii() and _LATIN.search(word) and (other := _OTHER.search(word)):
                odd = other[0]
                yield RULE.at(
                    record,
                    f"{field(record, path)}: {word} holds the letter U+{ord(odd):04X} among Latin ones",
                    path=path,
                )
                break


RULE = Rule(
    code="WORD-11",
    level="error",
    scope="record",
    title="Letters of two alphabets in one word",
    what="A word is written in the letters of one alphabet.",
    why=(
        "A Cyrillic or Greek letter that looks like a Latin one makes a word that no search finds and a unit that"
        " is none."
    ),
    mend="Type the word again.",
    example=Example("components/fuel-filter.yaml", "title: Fuel filter", "title: Fuеl filter"),
    find=find,
)
