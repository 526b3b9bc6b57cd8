"""First looks at a text: a rule names signs, beginnings of words, without which its pattern cannot match, and asks for them first.

Every word of the book is compared with the signs once, however often it is written; a text then costs one look-up a word.
"""

from __future__ import annotations

import re
from functools import reduce
from operator import or_

# Small letters for capitals and a space for what is no letter, digit or `_`; bytes are translated four times as fast as text.
_PLAIN = bytes(ord(chr(code).lower()) if chr(code).isalnum() or chr(code) == "_" else 32 for code in range(128))
_PLAIN += bytes(range(128, 256))
WATCHED: set[bytes] = set()  # every word that a rule watches for
EVERY = -1  # the bits of a text that may hold any sign


class _Bits(dict):
    """A word to the bits of the signs with which one of its parts begins."""

    def __init__(self) -> None:
        super().__init__()
        self.groups = 0
        self.by_start: dict[str, list[tuple[str, int]]] = {}  # by the first two letters

    def __missing__(self, word: bytes) -> int:
        bits, text = 0, word.decode()
        for part in (text,) if text.isalnum() else re.findall(r"\w+", text):
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


def watch(*words: str) -> frozenset[bytes]:
    """Whole words in small letters that a rule watches for in all prose."""
    watched = frozenset(word.encode() for word in words)
    WATCHED.update(watched)
    return watched


def plain_of(text: str) -> bytes:
    """A text in small letters with spaces for the ASCII marks; a character of ASCII stays one byte."""
    return text.encode("utf-8", "replace").translate(_PLAIN)


def words_of(text: str) -> list[bytes]:
    """The words of a text in small letters without the ASCII marks around and between them."""
    return plain_of(text).split()


def signs_of(text: str) -> int:
    """The bits of all signs with which a word of a text begins.

    Every bit where a letter lies outside ASCII, because patterns may take it for the small or capital form of one inside.
    """
    return signs_in(plain_of(text)) if text.isascii() else EVERY


def signs_in(plain: bytes) -> int:
    """The same for a text in ASCII that has been made plain."""
    return reduce(or_, map(_BITS.__getitem__, plain.split()), 0)
