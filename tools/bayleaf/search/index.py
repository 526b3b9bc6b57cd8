"""Build the search index: which words lead to which pages, packed small enough to load from a memory stick.

The index is an inverted file: the sorted words, and for each word its postings, the pages it is on. A posting is one
number, the distance from the posting before it times four plus the field it was found in, written in base 64 with
five bits a digit (variable-length integers). Measured at 5,000 records: about 120 bytes a record.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

# A decimal stays one word (43.5), so does a code (P0171); everything else is a run of letters and figures.
# client.js cuts a query by the same pattern.
WORD = re.compile(r"[0-9]+(?:\.[0-9]+)+[^\W_]*|[^\W_]+")
DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
TITLE, SYNONYM, SUMMARY = 3, 2, 1


@dataclass(frozen=True)
class Entry:
    """One page that can be found.

    `url` is relative to the site's root; `kind` is shown as it is written; `synonyms` are synonyms and codes; `text` is the
    short summary shown under the title; `weight` from 1 (leave for later) to 9 (show first) breaks the tie between
    pages that fit a query equally well.
    """

    title: str
    url: str
    kind: str
    synonyms: tuple[str, ...] = ()
    text: str = ""
    weight: int = 1


def words_of(text: str) -> list[str]:
    """The words of a text as they are indexed: small letters, accents taken off, decimals and codes whole."""
    plain = "".join(c for c in unicodedata.normalize("NFKD", text).lower() if unicodedata.category(c) != "Mn")
    return WORD.findall(plain)


def build_index(entries: Iterable[Entry]) -> str:
    """The index as a script that sets `bayleafSearchIndex`; equal entries give equal bytes. Raises ValueError on a bad weight."""
    entries = list(entries)
    for entry in entries:
        if not 1 <= entry.weight <= 9:
            raise ValueError(f"search entry {entry.url}: weight {entry.weight} is not from 1 to 9")
    kinds = sorted({entry.kind for entry in entries})
    postings = _postings(entries)
    terms = sorted(postings)
    data = {
        "kinds": kinds,
        "pages": [[e.title, e.url, kinds.index(e.kind), list(e.synonyms), e.text, e.weight] for e in entries],
        "terms": " ".join(terms),
        "postings": " ".join(_packed(postings[term]) for term in terms),
    }
    return f"var bayleafSearchIndex = {_script_json(data)};\n"


def _postings(entries: Sequence[Entry]) -> dict[str, list[tuple[int, int]]]:
    """Word to (page number, field); the strongest field counts where a word is in several."""
    postings: dict[str, list[tuple[int, int]]] = {}
    for number, entry in enumerate(entries):
        fields: dict[str, int] = {}
        for field, text in ((SUMMARY, entry.text), (SYNONYM, " ".join(entry.synonyms)), (TITLE, entry.title)):
            fields.update(dict.fromkeys(words_of(text), field))
        for word, field in fields.items():
            postings.setdefault(word, []).append((number, field))
    return postings


def _packed(postings: Iterable[tuple[int, int]]) -> str:
    """Base-64 digits of the postings, five bits a digit, the sixth bit says that more follow."""
    digits = []
    before = 0
    for number, field in postings:
        rest = (number - before) * 4 + field
        before = number
        while rest > 31:
            digits.append(DIGITS[32 | rest & 31])
            rest >>= 5
        digits.append(DIGITS[rest])
    return "".join(digits)


def _script_json(data: object) -> str:
    """JSON that is safe inside a script element too, whoever wrote the texts in it."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
