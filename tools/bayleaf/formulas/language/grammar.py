"""Text of an expression to a tree. Our own tokens and a Pratt parser: nothing here runs what it reads.

Lowest to highest: < <= > >=, + -, * /, unary -, ** (to the right). -x ** 2 is -(x ** 2).
"""

from __future__ import annotations

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.tokens import FUNCTIONS, tokens_of
from bayleaf.formulas.language.tree import Node

MAX_DEPTH = 24

_BINDS = {"<": 1, "<=": 1, ">": 1, ">=": 1, "+": 2, "-": 2, "*": 3, "/": 3, "**": 5}
_UNARY = 4


def parse(text: str) -> Node:
    """The tree of an expression; raises FormulaError with the offset of what cannot be read."""
    return _Parser(text).whole()


class _Parser:
    def __init__(self, text: str) -> None:
        self.tokens, self.at, self.depth = tokens_of(text), 0, 0

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
