"""A lowered tree to a text that Python and JavaScript read alike: calls, + - *, brackets, and values by index.

Every operation that the two languages decide differently is a call of one of NAMES; each language brings its own.
Undefined is NaN and spreads: a division by 0, a root or logarithm of a negative, a power that is not finite.
"""

from __future__ import annotations

import math

from bayleaf.formulas.language.tree import Node, number

NAMES = (
    "divide",
    "power",
    "root",
    "exponential",
    "logarithm",
    "least",
    "most",
    "size",
    "below",
    "at_most",
    "choose",
    "keep",
)
_CALLS = {
    "/": "divide",
    "**": "power",
    "sqrt": "root",
    "exp": "exponential",
    "log": "logarithm",
    "abs": "size",
    "<": "below",
    "<=": "at_most",
    "if": "choose",
}


def emit(node: Node, places: dict[str, str]) -> str:
    """The text of an expression; `places` says what stands for each name, such as "v[3]"."""
    match node.kind:
        case "number":
            return repr(float(number(node.text)))
        case "name":
            return repr(math.pi) if node.text == "pi" else places[node.text]
    args = [emit(arg, places) for arg in node.args]
    match node.kind:
        case "neg":
            return f"(-{args[0]})"
        case "+" | "-" | "*":
            return f"({args[0]} {node.kind} {args[1]})"
        case ">":
            return f"below({args[1]}, {args[0]})"
        case ">=":
            return f"at_most({args[1]}, {args[0]})"
        case "min" | "max":
            name, text = "least" if node.kind == "min" else "most", args[0]
            for other in args[1:]:
                text = f"{name}({text}, {other})"
            return text
    return f"{_CALLS[node.kind]}({', '.join(args)})"


def body(inputs: list[str], constants: dict[str, float], lines: dict[str, Node]) -> list[str]:
    """One assignment a line: v holds the inputs first, then the lines in order. Constants stand as numbers."""
    places = {name: f"v[{index}]" for index, name in enumerate([*inputs, *lines])}
    places |= {name: f"({value!r})" for name, value in constants.items()}
    return [f"{places[name]} = keep({emit(tree, places)})" for name, tree in lines.items()]
