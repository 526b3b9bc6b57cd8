"""WORD-15: phrase for which the trade has a word."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.prose.texts import plain_of
from bayleaf.checks.prose.trade import KEYS, in_text, refused
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_NOT_OURS = frozenset({"sources"})  # the titles of published works are kept as printed


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Titles and prose, but not the title of a complaint, which is in the driver's words, and not also_called, where people search by such words."""
    if record.kind in _NOT_OURS:
        return
    title = KEYS.intersection(plain_of(record.title).split()) if record.kind != "symptoms" else frozenset()
    if title:
        yield from _said(record, ("title",), record.title, title)
    keys = in_text(context.texts.all_prose(record), context.texts.words(record))
    for path, text in context.texts.prose(record) if keys else ():
        yield from _said(record, path, text, keys)


def _said(record: Record, path: tuple, text: str, keys: frozenset[bytes]) -> Iterator[Finding]:
    for line in refused(text, keys):
        sense = f" ({line.sense})" if line.sense else ""
        yield RULE.at(record, f"{field(record, path)} says {line.phrase}{sense}; the trade says {line.word}", path=path)


RULE = Rule(
    code="WORD-15",
    level="warning",
    scope="record",
    title="Phrase for which the trade has a word",
    what="Titles and texts are in American English and use the words of an American shop; checks/prose/trade_words.txt lists the phrases that are refused, each in its sense.",
    why="Whoever reads at the car must not stop to translate, and searches by the word that the trade uses.",
    mend="Write the word that the message names, in the form that the sentence needs, or except the record if the phrase has another sense there.",
    example=Example(
        "components/in-tank-pump.yaml",
        "fails: [Wears and loses flow.]",
        "fails: [Wears until the car runs a weak mixture at raised idle.]",
    ),
    find=find,
    excusable=True,
)
