"""What rules read in the texts of a record: its prose, worked out once, and first looks that are faster than patterns."""

from __future__ import annotations

import re
from functools import cached_property

from bayleaf.checks.prose.writing import synonyms
from bayleaf.records import Book, Record
from bayleaf.records.named import prose_of

Prose = list[tuple[tuple, str]]
# Small letters for capitals and a space for what is no letter, digit or `_`; bytes are translated four times as fast as text.
_PLAIN = bytes(ord(chr(code).lower()) if chr(code).isalnum() or chr(code) == "_" else 32 for code in range(128))
_PLAIN += bytes(range(128, 256))


class Texts:
    """The texts of one book. Rules go record by record, so the prose of the last record is enough to keep."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._record: Record | None = None
        self._prose: Prose = []
        self._all = ""
        self._words: frozenset[bytes] | None = None
        self._in_file: dict[tuple[str, tuple[bytes, ...]], bool] = {}

    def prose(self, record: Record) -> Prose:
        """(path, text) of every field of a record that is prose."""
        self._read(record)
        return self._prose

    def all_prose(self, record: Record) -> str:
        """The prose of a record in one text, a field a line, for a first look."""
        self._read(record)
        return self._all

    def words(self, record: Record) -> frozenset[bytes]:
        """The words of all its prose in small letters, without the ASCII marks around and between them."""
        self._read(record)
        if self._words is None:
            self._words = frozenset(plain_of(self._all).split())
        return self._words

    def may_say(self, record: Record, stems: tuple[str, ...]) -> bool:
        """A first look, far faster than a pattern: whether one of these stands in its prose, in whatever case."""
        text = self.all_prose(record)
        small = text.lower()
        return not text.isascii() or any(stem in small for stem in stems)

    def _read(self, record: Record) -> None:
        if self._record is not record:
            self._words = None
            self._record, self._prose = record, prose_of(record)
            self._all = "\n".join([text for _path, text in self._prose])

    def with_match(self, record: Record, pattern: re.Pattern[str]) -> Prose:
        """The prose of a record where a pattern that stays inside a line matches somewhere in it, else nothing."""
        return self.prose(record) if pattern.search(self.all_prose(record)) else []

    def may_hold(self, record: Record, signs: tuple[bytes, ...]) -> bool:
        """A first look: whether any of these stands in the file of a record, which may write its letters as escapes."""
        if not record.prefix:
            return _may_hold(record.source.raw, signs)
        held = self._in_file.get((record.file, signs))  # many entries share a file
        if held is None:
            held = self._in_file[record.file, signs] = _may_hold(record.source.raw, signs)
        return held

    @cached_property
    def synonyms(self) -> dict[str, str]:
        """Every other word for a term of the glossary, in small letters, to the term's title."""
        return synonyms(self.book.of("terms"))

    @cached_property
    def synonym_pattern(self) -> re.Pattern[str]:
        """Finds any of them as a whole word."""
        longest_first = sorted(self.synonyms, key=len, reverse=True)
        return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b", re.IGNORECASE)

    @cached_property
    def _by_word(self) -> dict[bytes, list[bytes]]:
        """The longest word of each synonym to the synonyms that it belongs to."""
        by_word: dict[bytes, list[bytes]] = {}
        for other in map(plain_of, self.synonyms):
            by_word.setdefault(max(other.split(), key=len, default=b""), []).append(other)
        return by_word

    def may_hold_synonyms(self, record: Record) -> bool:
        """A first look, much faster than the pattern: whether some synonym's letters stand in the prose of a record."""
        text = plain_of(self.all_prose(record))
        there = self._by_word.keys() & self.words(record)
        return not text.isascii() or any(other in text for word in there for other in self._by_word[word])


def plain_of(text: str) -> bytes:
    """A text in small letters with spaces for the ASCII marks; a character of ASCII stays one byte."""
    return text.encode("utf-8", "replace").translate(_PLAIN)


def _may_hold(raw: bytes, signs: tuple[bytes, ...]) -> bool:
    return not raw or b"\\" in raw or any(sign in raw for sign in signs)
