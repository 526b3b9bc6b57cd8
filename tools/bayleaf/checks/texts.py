"""What rules read in the words of a record: its prose, worked out once, and first looks that are faster than patterns."""

from __future__ import annotations

import re
from functools import cached_property

from bayleaf.checks.bases import bases_of
from bayleaf.checks.signs import WATCHED, signs_of, words_of
from bayleaf.checks.writing import prose_of, synonyms
from bayleaf.records import Book, Record


class Words:
    """The words of one record in the forms that rules ask for, each worked out when first asked for."""

    def __init__(self, record: Record):
        self.record = record

    @cached_property
    def prose(self) -> list[tuple[tuple, str]]:
        return prose_of(self.record)

    @cached_property
    def all(self) -> str:
        return "\n".join([text for _path, text in self.prose])

    @cached_property
    def small(self) -> str:
        return self.all.lower()

    @cached_property
    def steps(self) -> list[int]:
        return [signs_of(step.get("do", "")) for step in self.record.data["steps"]]

    @cached_property
    def fields(self) -> dict[str, list[tuple[int, dict]]]:
        found: dict[str, list[tuple[int, dict]]] = {}
        for pair in enumerate(self.record.data["steps"]):
            for field in pair[1]:
                found.setdefault(field, []).append(pair)
        return found

    @cached_property
    def bases(self) -> list[tuple[tuple, dict]]:
        return bases_of(self.record.data)


class Texts:
    """The part of a context that reads texts. The walk goes record by record, so the words of the last one are enough."""

    def __init__(self, book: Book):
        self.book = book
        self._last: Words | None = None
        self._there: tuple[Record | None, set[str]] = (None, set())

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

    def small_prose(self, record: Record) -> str:
        """The same in small letters."""
        return self._words(record).small

    def watched(self, record: Record) -> set[str]:
        """The words in the prose of a record that rules watch for, and those that stand for synonyms."""
        if self._there[0] is not record:
            self._there = (record, self._watched.intersection(words_of(self.all_prose(record))))
        return self._there[1]

    @cached_property
    def _watched(self) -> frozenset[str]:
        return frozenset(WATCHED | self._by_word.keys())

    def step_signs(self, record: Record) -> list[int]:
        """The signs in the words of each step of a procedure."""
        return self._words(record).steps

    def steps_with(self, record: Record, field: str) -> list[tuple[int, dict]]:
        """(index, step) of every step of a procedure that has a field."""
        return self._words(record).fields.get(field, [])

    def may_hold(self, record: Record, signs: tuple[bytes, ...]) -> bool:
        """A first look: whether any of these stands in the file of a record, which may write its letters as escapes."""
        raw = record.source.raw
        return not raw or b"\\" in raw or any(sign in raw for sign in signs)

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
        return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b", re.I) if longest_first else None

    @cached_property
    def _by_word(self) -> dict[str, list[str]]:
        """The longest word of each of them to those that it belongs to."""
        found: dict[str, list[str]] = {}
        for other in self.synonyms:
            found.setdefault(max(words_of(other), key=len, default=""), []).append(other)
        return found

    def may_hold_synonyms(self, record: Record) -> bool:
        """A first look, much faster than the pattern: whether some synonym's letters stand in the prose of a record."""
        text, there = self.small_prose(record), self.watched(record)
        return any(other in text for word in there for other in self._by_word.get(word, ())) or not text.isascii()
