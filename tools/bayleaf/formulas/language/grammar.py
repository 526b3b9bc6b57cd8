"""Text of an expression to a tree. Our own tokens and a Pratt parser: nothing here runs what it reads.

Lowest to highest: < <= > >=, + -, * /, unary -, ** (to the right). -x ** 2 is -(x ** 2).
"""

from __future__ import annotations

import re
import unicodedata

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.tree import Node

MAX_LENGTH = 2000
MAX_TOKENS = 200
MAX_DEPTH = 24

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

_BINDS = {"<": 1, "<=": 1, ">": 1, ">=": 1, "+": 2, "-": 2, "*": 3, "/": 3, "**": 5}
_UNARY = 4
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


def parse(text: str) -> Node:
    """The tree of an expression; raises FormulaError with the offset of what cannot be read."""
    return _Parser(text).whole()


def _tokens(text: str) -> list[tuple[str, str, int]]:
    found, at, end = [], 0, len(text.rstrip(_SPACE))
    if end > MAX_LENGTH:
        raise FormulaError(f"longer than {MAX_LENGTH} characters", "split it into lines", (), MAX_LENGTH)
    while at < end:
        match = _TOKEN.match(text, at)
        if not match:
            at += len(text[at:]) - len(text[at:].lstrip(_SPACE))
            raise FormulaError(f"{_said(text[at])} has no meaning in a formula", _instead(text[at]), (), at)
        kind = match.lastgroup
        found.append((kind, match[kind], match.start(kind)))
        at = match.end()
        if kind == "number" and at < end and text[at] in _AFTER_NUMBER:
            raise FormulaError(f"{text[at]!r} right after a number", "write 2 * x; 12e3 belongs in constants", (), at)
        if len(found) > MAX_TOKENS:
            raise FormulaError(
                f"longer than {MAX_TOKENS} words and signs", "split it into lines", (), match.start(kind)
            )
    found.append(("end", "", end))
    return found


def _said(sign: str) -> str:
    """A character as a message can print it."""
    if (sign.isascii() and sign.isprintable()) or sign in _INSTEAD:
        return f"the sign {sign}"
    return f"U+{ord(sign):04X} {unicodedata.name(sign, '')}".strip()


def _instead(sign: str) -> str:
    if sign.isascii() and sign.isupper():
        return "names are small letters, digits and _"
    return _INSTEAD.get(sign, "use names, numbers, + - * / ** ( ) and the functions " + ", ".join(FUNCTIONS))


class _Parser:
    def __init__(self, text: str) -> None:
        self.tokens, self.at, self.depth = _tokens(text), 0, 0

    def whole(self) -> Node:
        node = self.expression(0)
        if self.tokens[self.at][0] != "end":
            raise self.error(
                f"{self.tokens[self.at][1]!r} where the formula could end",
                "an operator is missing before it, or a bracket too many",
            )
        return node

    def error(self, message: str, help: str) -> FormulaError:
        _, text, start = self.tokens[self.at]
        return FormulaError(message, help, (), start, max(len(text), 1))

    def take(self) -> tuple[str, str, int]:
        token = self.tokens[self.at]
        self.at += 1
        return token

    def expect(self, sign: str, opened: int) -> int:
        """The end of the sign that must come here."""
        kind, text, start = self.tokens[self.at]
        if text != sign:
            said = repr(text) if kind != "end" else "the end"
            raise self.error(f"{said} where {sign!r} must come", f"the bracket at {opened + 1} is open")
        self.at += 1
        return start + 1

    def expression(self, least: int) -> Node:
        self.depth += 1
        if self.depth > MAX_DEPTH:
            raise self.error(f"nested deeper than {MAX_DEPTH}", "split it into lines")
        left = self.operand()
        while (sign := self.tokens[self.at][1]) in _BINDS and _BINDS[sign] > least:
            if _BINDS[sign] == 1 and left.kind in ("<", "<=", ">", ">="):
                raise self.error("two comparisons in a row", "compare two values in each if( )")
            self.at += 1
            right = self.expression(_UNARY - 1 if sign == "**" else _BINDS[sign])
            left = Node(sign, (left, right), "", left.start, right.end)
        self.depth -= 1
        return left

    def operand(self) -> Node:
        kind, text, start = self.take()
        if kind == "number":
            return Node("number", (), text, start, start + len(text))
        if text == "-":
            inner = self.expression(_UNARY)
            return Node("neg", (inner,), "", start, inner.end)
        if text == "(":
            inner = self.expression(0)
            return Node(inner.kind, inner.args, inner.text, start, self.expect(")", start))
        if kind == "name":
            if self.tokens[self.at][1] == "(":
                return self.call(text, start)
            if text in FUNCTIONS:
                raise FormulaError(f"{text} without its brackets", f"write {text}( )", (), start, len(text))
            return Node("name", (), text, start, start + len(text))
        self.at -= 1
        said = f"{text!r}" if kind != "end" else "the end" if self.at else "an empty formula"
        raise self.error(f"{said} where a value must come", "write a name, a number or a bracket")

    def call(self, name: str, start: int) -> Node:
        if name not in FUNCTIONS:
            raise FormulaError(
                f"there is no function {name}", f"there are {', '.join(FUNCTIONS)}", (), start, len(name)
            )
        opened = self.take()[2]
        args = [self.expression(0)]
        while self.tokens[self.at][1] == ",":
            self.at += 1
            args.append(self.expression(0))
        end = self.expect(")", opened)
        least, most = FUNCTIONS[name]
        if not least <= len(args) <= most:
            wants = f"{least}" if least == most else f"{least} to {most}"
            raise FormulaError(f"{name} with {len(args)} values", f"it takes {wants}", (), start, end - start)
        return Node(name, tuple(args), "", start, end)
