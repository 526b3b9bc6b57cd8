"""The phrases that the book does not use, and for each the word of the trade: the table is `trade_words.txt` beside this file."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from bayleaf.checks.prose.texts import plain_of

TABLE = Path(__file__).with_name("trade_words.txt")
_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")
_LINK = re.compile(r"\[\[[^\[\]|]*(?:\|([^\[\]]*))?\]\]")


class Refused(NamedTuple):
    """One line of the table. `plain` is the phrase as bytes with a space at each end, so that only whole words are found."""

    phrase: str
    word: str
    sense: str
    plain: bytes


def read(text: str) -> list[Refused]:
    """The lines of a table that are not empty and no remark."""
    result = []
    for line in text.split("\n"):
        if line.strip() and not line.startswith("#"):
            phrase, word, sense = (*(part.strip() for part in line.split("|")), "")[:3]
            result.append(Refused(phrase, word, sense, b" " + b" ".join(plain_of(phrase).split()) + b" "))
    return result


def _by_key(table: list[Refused]) -> dict[bytes, list[Refused]]:
    """Each line under the longest word of its phrase, which a first look finds."""
    result: dict[bytes, list[Refused]] = {}
    for line in table:
        result.setdefault(max(line.plain.split(), key=len), []).append(line)
    return result


_LINES = _by_key(read(TABLE.read_text(encoding="utf-8")))
KEYS = frozenset(_LINES)


def spoken(text: str) -> str:
    """A text as a page shows it; a link without words shows the title of its record, which is looked at there."""
    return _LINK.sub(lambda link: link[1] or "…", text) if "[[" in text else text


def in_text(text: str, words: frozenset[bytes]) -> frozenset[bytes]:
    """A first look at the whole prose of a record, given with its words: the keys of the phrases that may stand in it."""
    keys = KEYS & words
    if not keys:
        return keys
    whole = b" " + b" ".join(plain_of(spoken(text)).split()) + b" "
    return frozenset(key for key in keys if any(line.plain in whole for line in _LINES[key]))


def refused(text: str, keys: frozenset[bytes]) -> Iterator[Refused]:
    """The lines under these keys whose phrase stands in a text. An id is no text, whatever its words."""
    if _ID.fullmatch(text):
        return
    plain = b" " + plain_of(spoken(text)) + b" "
    for key in sorted(keys):
        yield from (line for line in _LINES[key] if line.plain in plain)
