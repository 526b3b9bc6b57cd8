"""Text of an expression to its tokens: numbers, names and signs, each with its place."""

from __future__ import annotations

import re
import unicodedata

from bayleaf.formulas.language.errors import FormulaError

MAX_LENGTH = 2000
MAX_TOKENS = 200

# name: how many arguments it takes
FUNCTIONS = {
    "absolute": (2, 2),
    "gauge": (1, 2),
    "vacuum": (2, 2),
    "above_ambient": (1, 1),
    "sqrt": (1, 1),
    "exp": (1, 1),
    "log": (1, 1),
    "abs": (1, 1),
    "min": (2, 8),
    "max": (2, 8),
    "if": (3, 3),
}
RESERVED = {*FUNCTIONS, "pi"}

_SPACE = " \t\r\n"
_TOKEN = re.compile(
    r"[ \t\r\n]*(?:(?P<number>[0-9]+(?:\.[0-9]+)?)|(?P<name>[a-z][a-z0-9_]*)|(?P<sign>\*\*|<=|>=|[-+*/(),<>]))"
)
_AFTER_NUMBER = set("abcdefghijklmnopqrstuvwxyz._0123456789")
_INSTEAD = {
    "^": "write ** for a power",
    "×": "write *",
    "·": "write *",
    "÷": "write /",
    "−": "write -",
    "–": "write -",
    "=": "the line's name stands before the colon; compare with < <= > >=",
    "!": "compare with < <= > >=",
    "%": "a percentage is a ratio inside; give the input the unit %",
    ".": "write a digit before the point, as 0.5",
    "π": "write pi",
    "√": "write sqrt( )",
    "[": "use ( )",
    "{": "use ( )",
    "_": "a name starts with a letter",
}


def tokens_of(text: str) -> list[tuple[str, str, int]]:
    """(kind, text, offset) of every token, the kind "end" last; raises FormulaError for a sign that has no meaning."""
    tokens: list[tuple[str, str, int]] = []
    at, end = 0, len(text.rstrip(_SPACE))
    if end > MAX_LENGTH:
        raise FormulaError(f"longer than {MAX_LENGTH} characters", "split it into lines", (), MAX_LENGTH)
    while at < end:
        match = _TOKEN.match(text, at)
        if not match:
            at += len(text[at:]) - len(text[at:].lstrip(_SPACE))
            raise FormulaError(f"{_said(text[at])} has no meaning in a formula", _instead(text[at]), (), at)
        kind = match.lastgroup or ""
        tokens.append((kind, match[kind], match.start(kind)))
        at = match.end()
        if kind == "number" and at < end and text[at] in _AFTER_NUMBER:
            raise FormulaError(f"{text[at]!r} right after a number", "write 2 * x; 12e3 belongs in constants", (), at)
        if len(tokens) > MAX_TOKENS:
            raise FormulaError(
                f"longer than {MAX_TOKENS} words and signs", "split it into lines", (), match.start(kind)
            )
    tokens.append(("end", "", end))
    return tokens


def _said(sign: str) -> str:
    """A character as a message can print it."""
    if (sign.isascii() and sign.isprintable()) or sign in _INSTEAD:
        return f"the sign {sign}"
    return f"U+{ord(sign):04X} {unicodedata.name(sign, '')}".strip()


def _instead(sign: str) -> str:
    if sign.isascii() and sign.isupper():
        return "names are small letters, digits and _"
    return _INSTEAD.get(sign, "use names, numbers, + - * / ** ( ) and the functions " + ", ".join(FUNCTIONS))
