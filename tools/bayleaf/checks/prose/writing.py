"""The writing that the rules look at: every text of a record, their sentences, and the verbs that steps start with."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from bayleaf.records import Record

VERBS = Path(__file__).with_name("verbs.txt")
_END = re.compile(r"(?<=[.!?:;])\s+(?=[A-Z\"'(\[])|\n+")
_CLAUSE = re.compile(r"(When|If|While|After|Before|Once|Until|As soon as|For|With|At|On|In)\b([^,.]*), ", re.IGNORECASE)


@cache
def verbs() -> frozenset[str]:
    """The verbs of the list, in small letters."""
    lines = VERBS.read_text(encoding="utf-8").split("\n")
    return frozenset(line.strip() for line in lines if line.strip() and not line.startswith("#"))


def texts_of(data: object) -> list[tuple[tuple, str]]:
    """Every text in a record's data with its path."""
    result: list[tuple[tuple, str]] = []
    todo: list[tuple[tuple, object]] = [((), data)]
    while todo:
        path, value = todo.pop()
        if isinstance(value, str):
            result.append((path, value))
        elif isinstance(value, dict):
            todo += [((*path, key), inner) for key, inner in value.items()]
        elif isinstance(value, list):
            todo += [((*path, i), inner) for i, inner in enumerate(value)]
    return result


def plain(text: str) -> str:
    """A text with its links replaced by the words that a page shows."""
    if "[[" not in text:
        return text
    return re.sub(r"\[\[[^\[\]|]*\|([^\[\]]*)\]\]|\[\[([^\[\]|]*)\]\]", lambda m: m[1] or m[2] or "", text)


def sentences(text: str) -> list[str]:
    """The sentences of a text. A colon or semicolon before a capital ends one too."""
    return [s for s in _END.split(plain(text).strip()) if s]


def words(sentence: str) -> int:
    """How many words a sentence has; a number with its unit counts as it is written."""
    return len(sentence.split())


def steps_of(record: Record) -> Iterator[tuple[tuple, str]]:
    """(path, text) of every step in words, and of every avoidance of a caution."""
    for i, step in enumerate(record.data.get("steps", [])):
        if "do" in step:
            yield ("steps", i, "do"), step["do"]


def start(sentence: str) -> tuple[str, int]:
    """(the first word after an opening clause, the number of words in that clause)."""
    clause = _CLAUSE.match(sentence)
    rest = sentence[clause.end() :] if clause else sentence
    first = re.match(r"[\"'(]*([A-Za-z-]+)", rest)
    return (first[1].lower() if first else "", len(clause[0].split()) if clause else 0)


def synonyms(terms: dict[str, Record]) -> dict[str, str]:
    """Every other word for a term, in small letters, to the term's title."""
    result: dict[str, str] = {}
    for record in terms.values():
        for other in record.data.get("also_called", []) if record.sound else ():
            result.setdefault(other.lower(), record.title)
    return result
