"""First looks at a text: a rule names signs, beginnings of words, without which its pattern cannot match, and asks for them first.

Every word of the book is compared with the signs once, however often it is written; a text then costs one look-up a word.
"""

from __future__ import annotations

import re
import string
from functools import reduce
from operator import or_

_PLAIN = str.maketrans({**dict.fromkeys(set(string.punctuation) - {"_"}, " "), **dict(zip(string.ascii_uppercase, string.ascii_lowercase, strict=True))})
WATCHED: set[str] = set()  # every word that a rule watches for
EVERY = -1  # the bits of a text that may hold any sign


class _Bits(dict):
    """A word to the bits of the signs with which one of its parts begins."""

    def __init__(self) -> None:
        super().__init__()
        self.groups = 0
        self.by_start: dict[str, list[tuple[str, int]]] = {}  # by the first two letters

    def __missing__(self, word: str) -> int:
        bits = 0
        for part in (word,) if word.isalnum() else re.findall(r"\w+", word):
            for start in (part[:1], part[:2]):
                for stem, bit in self.by_start.get(start, ()):
                    if part.startswith(stem):
                        bits |= bit
        self[word] = bits
        return bits


_BITS = _Bits()


def sign(*stems: str) -> int:
    """A bit that stands for these beginnings of words, in small letters."""
    bit = 1 << _BITS.groups
    _BITS.groups += 1
    for stem in stems:
        _BITS.by_start.setdefault(stem[:2], []).append((stem, bit))
    _BITS.clear()
    return bit


def watch(*words: str) -> frozenset[str]:
    """Whole words in small letters that a rule watches for in all prose."""
    WATCHED.update(words)
    return frozenset(words)


def words_of(text: str) -> list[str]:
    """The words of a text in small letters without the ASCII marks around and between them."""
    return text.translate(_PLAIN).split()


def signs_of(text: str) -> int:
    """The bits of all signs with which a word of a text begins.

    Every bit where a letter lies outside ASCII, because patterns may take it for the small or capital form of one inside.
    """
    if not text.isascii():
        return EVERY
    return reduce(or_, map(_BITS.__getitem__, words_of(text)), 0)
