"""The tree of an expression."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from typing import NamedTuple


class Node(NamedTuple):
    """A part of an expression. `kind`: number, name, neg, an operator, or a function's name.

    `text` is the number or the name as written; `start` and `end` are its place in the expression.
    """

    kind: str
    args: tuple[Node, ...] = ()
    text: str = ""
    start: int = 0
    end: int = 0


def nodes(node: Node) -> Iterator[Node]:
    """The node and everything in it, each part before what it is made of."""
    todo = [node]
    while todo:
        node = todo.pop()
        yield node
        todo += reversed(node.args)


@cache
def number(text: str) -> Fraction:
    """A number as written, exactly."""
    return Fraction(text)


def literal(node: Node) -> Fraction | None:
    """The value of a tree made of numbers and + - * / only, else None."""
    if node.kind == "number":
        return number(node.text)
    parts = [value for arg in node.args if (value := literal(arg)) is not None]
    if not parts or len(parts) < len(node.args):
        return None
    match node.kind:
        case "neg":
            return -parts[0]
        case "+":
            return parts[0] + parts[1]
        case "-":
            return parts[0] - parts[1]
        case "*":
            return parts[0] * parts[1]
        case "/" if parts[1]:
            return parts[0] / parts[1]
    return None


def cost(node: Node) -> int:
    """How much work an expression is: one an operation, four a power, root, exponential or logarithm."""
    return sum(4 if part.kind in ("**", "sqrt", "exp", "log") else 1 for part in nodes(node))
