"""Bytes to text, and the parser's complaints in our words: what can be said before there is any data."""

from __future__ import annotations

import re
from typing import NamedTuple

import yaml

MOST_BYTES = 64 * 1024

# What a reader does not see: controls (but tab, LF, CR), bidirectional and zero-width marks, joiners, fillers and blanks
# that are no space, spaces that are not U+0020, separators, variation selectors, tags, private use, BOM, surrogates.
HIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\xa0\u00ad\u034f\u061c\u115f\u1160\u1680\u17b4\u17b5\u180b-\u180f\u2000-\u200f\u2028-\u202f\u205f-\u206f"
    "\u2800\u3000\u3164\ud800-\uf8ff\ufe00-\ufe0f\ufeff\uffa0\ufff0-\ufffb\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U0010ffff]"
)
_PLAIN = bytes([9, 10, 13, *range(32, 127)])  # of ASCII, what HIDDEN leaves
_DIRECTIVE = re.compile(r"^%", re.MULTILINE)
_TAB_INDENT = re.compile(r"^ *\t", re.MULTILINE)
_LONE_CR = re.compile(r"\r(?!\n)")


class Problem(NamedTuple):
    """One thing wrong in the text; `start` and `end` are (line, column) from 1, `end` exclusive."""

    code: str
    message: str
    help: str
    start: tuple[int, int] = (1, 1)
    end: tuple[int, int] = (1, 1)


def decode(raw: bytes) -> str | Problem:
    """The text of a file, or the one thing that keeps it from being read."""

    def stop(code: str, message: str, help: str, index: int | None = None, text: str = "") -> Problem:
        line, column = _place(text, index) if index is not None else (1, 1)
        return Problem(code, message, help, (line, column), (line, column + 1))

    if len(raw) > MOST_BYTES:
        return stop("FILE-4", f"the file has more than {MOST_BYTES} bytes", "Split it into smaller records.")
    if raw.startswith(b"\xef\xbb\xbf"):
        return stop("FILE-1", "the file starts with a byte-order mark", "Save it as UTF-8 without one.")
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as err:
        before = raw[: err.start].decode("utf-8")
        return stop("FILE-1", "this is not UTF-8 text", "Save the file as UTF-8.", len(before), before)
    # first looks, each far faster than its pattern, which nearly no file needs
    if (not raw.isascii() or raw.translate(None, _PLAIN)) and (match := HIDDEN.search(text)):
        name = f"U+{ord(match.group()):04X}"
        return stop(
            "FILE-2",
            f"hidden character {name}",
            "Delete it, or put a plain space; it changes what a reader sees.",
            match.start(),
            text,
        )
    if "%" in text and (match := _DIRECTIVE.search(text)):
        return stop("FILE-8", "a directive (%)", "Delete the line; a record needs none.", match.start(), text)
    if "\t" in text and (match := _TAB_INDENT.search(text)):
        return stop("FILE-3", "a tab in the indentation", "Indent with spaces.", match.end() - 1, text)
    if "\r" in text and (match := _LONE_CR.search(text)):
        return stop("FILE-3", "a lone carriage return", "End lines with a line feed.", match.start(), text)
    return text


def _place(text: str, index: int) -> tuple[int, int]:
    return text.count("\n", 0, index) + 1, index - (text.rfind("\n", 0, index) + 1) + 1


# The parser's own sentences, in ours. Keys are beginnings of what libyaml says.
_WORDS = {
    "mapping values are not allowed": (
        "a colon where no field can start",
        "Quote the text, or put the field on its own line.",
    ),
    "did not find expected key": (
        "this line fits no field above it",
        "Look at its indentation, and at an open quote above.",
    ),
    "could not find expected ':'": ("a field name without its colon", "Write `name: value`, or quote the text."),
    "did not find expected '-' indicator": (
        "this line fits no list above it",
        "Start every item with a hyphen at one indentation.",
    ),
    "did not find expected ',' or ']'": ("a list in brackets is not closed", "Add the comma or the closing bracket."),
    "did not find expected ',' or '}'": ("a map in braces is not closed", "Add the comma or the closing brace."),
    "found character that cannot start any token": ("a character that no value may start with", "Quote the text."),
    "did not find expected node content": (
        "a value that is missing or not closed",
        "Fill it in; close every bracket and brace.",
    ),
    "did not find expected alphabetic or numeric character": (
        "an anchor (&) or alias (*) without a name",
        "Quote the text, or write the value out.",
    ),
    "did not find expected <document start>": (
        "text behind the end of the record",
        "Keep one record a file, without `...` or `---`.",
    ),
    "block sequence entries are not allowed": (
        "a list item where no list can start",
        "Put the list on the lines below the field.",
    ),
    "found invalid Unicode character escape code": ("an escape that is no character", "Write the character itself."),
    "control characters are not allowed": ("a character that no file may hold", "Delete it."),
    "found unexpected end of stream": ("the file ends inside quotes", "Close the quotes."),
    "found unknown escape character": (
        "an unknown escape in double quotes",
        "Use single quotes, or write two backslashes.",
    ),
    "found undefined alias": ("an alias (*)", "Write the value out; records have no anchors or aliases."),
    "but found another document": ("a second document in the file", "Keep one record a file."),
}


def broken(err: yaml.YAMLError) -> Problem:
    """What the parser stumbled over, in our words."""
    said = str(getattr(err, "problem", "") or err)
    mark = getattr(err, "problem_mark", None)
    line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
    words, help = next(
        (pair for start, pair in _WORDS.items() if said.startswith(start)),
        (
            "the YAML breaks off here",
            "Look at the indentation, the colons and the quotes of this line and the one above.",
        ),
    )
    code = "FILE-8" if "alias" in words else "FILE-5" if "second document" in words else "FILE-6"
    return Problem(code, words, help, (line, column), (line, column + 1))
