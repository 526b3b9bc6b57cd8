"""The writing that the rules look at: which fields are prose, their sentences, and the verbs that steps start with."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from bayleaf.records import Record, listed, mapped

VERBS = Path(__file__).with_name("verbs.txt")
# Prose by the last field name, or the one above a list index or a reading's answer.
_TEXTS = {
    "summary",
    "explains",
    "changed",
    "because",
    "does",
    "found",
    "fails",
    "setup",
    "misleads",
    "next",
    "explain",
    "sets",
    "holds",
    "working",
    "teaches",
    "ask",
    "means",
    "mistaken_for",
    "danger",
    "consequence",
    "avoid",
    "note",
    "words",
    "none",
    "do",
    "consumables",
    "cannot",
    "looked_up",
}
# Below these fields stand ids, answers, numbers and where they come from, and never prose; a test asks the schemas.
_NO_TEXTS = {
    "basis",
    "cautions",
    "stages",
    "differs",
    "takes",
    "shows",
    "inputs",
    "constants",
    "given",
    "gives",
    "systems",
    "tasks",
    "inherits",
    "through",
    "first",
    "felt_as",
    "has",
    "equipment",
    "states",
    "proves",
    "calculators",
    "acts",
    "conditions",
    "table",
    "chart",
    "formula",
}
_ALL_TEXTS = {"because", "results"}
_END = re.compile(r"(?<=[.!?:;])\s+(?=[A-Z\"'(\[])|\n+")
_CLAUSE = re.compile(r"(When|If|While|After|Before|Once|Until|As soon as|For|With|At|On|In)\b([^,.]*), ", re.IGNORECASE)


@cache
def verbs() -> frozenset[str]:
    """The verbs of the list, in small letters."""
    lines = VERBS.read_text(encoding="utf-8").split("\n")
    return frozenset(line.strip() for line in lines if line.strip() and not line.startswith("#"))


def prose_of(record: Record) -> list[tuple[tuple, str]]:
    """(path, text) of every field that is prose; steps come with the rest. Titles and names are none."""
    found: list[tuple[tuple, str]] = []
    _prose(record.data, (), found)
    return found


def _prose(data: dict, path: tuple, found: list) -> None:
    for key, value in data.items():
        kind = value.__class__
        if kind is str:
            if key in _TEXTS and value != "none":
                found.append(((*path, key), value))
        elif key in _ALL_TEXTS and not path:
            _every(value, (key,), found)
        elif key in _NO_TEXTS:
            continue
        elif kind is dict:
            _prose(value, (*path, key), found)
        elif kind is list:
            texts = key in _TEXTS
            for i, item in enumerate(value):
                if item.__class__ is str:
                    if texts:
                        found.append(((*path, key, i), item))
                elif item.__class__ is dict:
                    _prose(item, (*path, key, i), found)


def _every(data: object, path: tuple, found: list) -> None:
    """Every text below a field whose own fields are readings and answers, but for where it comes from."""
    if data.__class__ is str:
        if data != "none" or path[-1].__class__ is int:
            found.append((path, data))
    elif data.__class__ is dict:
        for key, value in data.items():
            if value.__class__ is str or key != "basis":
                _every(value, (*path, key), found)
    elif data.__class__ is list:
        for i, item in enumerate(data):
            _every(item, (*path, i), found)


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
    for i, step in enumerate(listed(record.data.get("steps"))):
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
    found = {}
    for record in terms.values():
        for other in listed(mapped(record.data).get("also_called")) if record.sound else ():
            found.setdefault(other.lower(), record.title)
    return found
