"""What rules read in the words of a record: its prose, worked out once, and first looks that are faster than patterns."""

from __future__ import annotations

import re
from functools import cached_property

from bayleaf.checks.prose.signs import WATCHED, plain_of, signs_in, signs_of, words_of
from bayleaf.checks.prose.writing import synonyms
from bayleaf.records import Book, Record
from bayleaf.records.named import bases_of, prose_of


class Words:
    """The words of one record in the forms that rules ask for. What every record is asked is worked out at once."""

    def __init__(self, record: Record) -> None:
        self.record = record
        self.prose = prose_of(record)
        self.all = "\n".join([text for _path, text in self.prose])
        self.plain = plain_of(self.all)
        self.words = self.plain.split()

    @cached_property
    def steps(self) -> list[int]:
        found, at, whole = [0] * len(self.record.data["steps"]), 0, self.all.isascii()
        for path, text in self.prose:
            if path[0] == "steps" and path[-1] == "do":
                found[path[1]] = signs_in(self.plain[at : at + len(text)]) if whole else signs_of(text)
            at += len(text) + 1
        return found

    @cached_property
    def fields(self) -> dict[str, list[tuple[int, dict]]]:
        found: dict[str, list[tuple[int, dict]]] = {}
        for pair in enumerate(self.record.data["steps"]):
            for field in pair[1]:
                found.setdefault(field, []).append(pair)
        return found

    @cached_property
    def bases(self) -> list[tuple[tuple, dict]]:
        return bases_of(self.record)


class Texts:
    """The part of a context that reads texts. The walk goes record by record, so the words of the last one are enough."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._last: Words | None = None
        self._held: dict[tuple[str, tuple[bytes, ...]], bool] = {}
        self._there: tuple[Record | None, set[bytes]] = (None, set())

    def _words(self, record: Record) -> Words:
        if self._last is None or self._last.record is not record:
            self._last = Words(record)
        return self._last

    def prose(self, record: Record) -> list[tuple[tuple, str]]:
        """(path, text) of every field of a record that is prose."""
        return self._words(record).prose

    def all_prose(self, record: Record) -> str:
        """The prose of a record in one text, a field a line, for a first look."""
        return self._words(record).all

    def plain_prose(self, record: Record) -> bytes:
        """The same in small letters and with spaces for the ASCII marks."""
        return self._words(record).plain

    def words(self, record: Record) -> list[bytes]:
        """The words of all its prose in small letters, without the ASCII marks around and between them."""
        return self._words(record).words

    def watched(self, record: Record) -> set[bytes]:
        """The words in the prose of a record that rules watch for, and those that stand for synonyms."""
        if self._there[0] is not record:
            self._there = (record, self._watched.intersection(self.words(record)))
        return self._there[1]

    @cached_property
    def _watched(self) -> frozenset[bytes]:
        return frozenset(WATCHED | self._by_word.keys())

    def step_signs(self, record: Record) -> list[int]:
        """The signs in the words of each step of a procedure."""
        return self._words(record).steps

    def steps_with(self, record: Record, field: str) -> list[tuple[int, dict]]:
        """(index, step) of every step of a procedure that has a field."""
        return self._words(record).fields.get(field, [])

    def may_hold(self, record: Record, signs: tuple[bytes, ...]) -> bool:
        """A first look: whether any of these stands in the file of a record, which may write its letters as escapes."""
        if not record.prefix:
            return _may_hold(record.source.raw, signs)
        held = self._held.get((record.file, signs))  # many entries share a file
        if held is None:
            held = self._held[record.file, signs] = _may_hold(record.source.raw, signs)
        return held

    def bases(self, record: Record) -> list[tuple[tuple, dict]]:
        """(path, basis) of every basis in a record."""
        return self._words(record).bases

    @cached_property
    def synonyms(self) -> dict[str, str]:
        """Every other word for a term of the glossary, in small letters, to the term's title."""
        return synonyms(self.book.of("terms"))

    @cached_property
    def synonym_pattern(self) -> re.Pattern | None:
        """Finds any of them as a whole word; None for a glossary without."""
        longest_first = sorted(self.synonyms, key=len, reverse=True)
        return (
            re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b", re.IGNORECASE) if longest_first else None
        )

    @cached_property
    def _by_word(self) -> dict[bytes, list[bytes]]:
        """The longest word of each of them to those that it belongs to."""
        found: dict[bytes, list[bytes]] = {}
        for other in self.synonyms:
            found.setdefault(max(words_of(other), key=len, default=b""), []).append(plain_of(other))
        return found

    def may_hold_synonyms(self, record: Record) -> bool:
        """A first look, much faster than the pattern: whether some synonym's letters stand in the prose of a record."""
        text, there = self.plain_prose(record), self.watched(record)
        return any(other in text for word in there for other in self._by_word.get(word, ())) or not text.isascii()


def _may_hold(raw: bytes, signs: tuple[bytes, ...]) -> bool:
    return not raw or b"\\" in raw or any(sign in raw for sign in signs)
