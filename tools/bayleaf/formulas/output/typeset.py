"""A formula as MathML and as plain text. Built from the tree alone, so nothing that was typed reaches the page as markup."""

from __future__ import annotations

from fractions import Fraction
from html import escape
from typing import NamedTuple

from bayleaf.formulas.calculator.model import Calculator
from bayleaf.formulas.language.tree import Node

_BINDS = {"<": 1, "<=": 1, ">": 1, ">=": 1, "+": 2, "-": 2, "neg": 2, "*": 3, "/": 9, "**": 5}
_SIGNS = {"<": "&lt;", "<=": "&#8804;", ">": "&gt;", ">=": "&#8805;", "+": "+", "-": "&#8722;", "*": "&#215;"}


class Typeset(NamedTuple):
    """One line: `mathml` shows the arithmetic, with conversions written out; `plain` is the formula as it was written."""

    line: str
    mathml: str
    plain: str


def typeset(calc: Calculator) -> list[Typeset]:
    """Every line of a calculator, in order. The MathML is Core, on one line of ASCII, and needs no script."""
    return [
        Typeset(name, mathml(name, line.plain), f"{name} = {' '.join(line.text.split())}")
        for name, line in calc.lines.items()
    ]


def mathml(name: str, tree: Node) -> str:
    """Name = expression as a block of MathML."""
    return f'<math display="block"><mrow>{_name(name)}<mo>=</mo>{_part(tree)}</mrow></math>'


def _name(name: str) -> str:
    return f"<mi>{escape(name).replace('_', '&#160;')}</mi>" if name != "pi" else "<mi>&#960;</mi>"


def _number(text: str) -> str:
    """A number, or the ratio that stands as an exponent."""
    value = Fraction(text)
    if "/" not in text:
        number = f"<mn>{escape(text.lstrip('-'))}</mn>"
    else:
        number = f"<mn>{abs(value.numerator)}</mn><mo>/</mo><mn>{value.denominator}</mn>"
    return f"<mrow>{'<mo>&#8722;</mo>' if value < 0 else ''}{number}</mrow>" if value < 0 or "/" in text else number


def _part(node: Node) -> str:
    match node.kind:
        case "number":
            return _number(node.text)
        case "name":
            return _name(node.text)
        case "/":
            return f"<mfrac>{_row(node.args[0])}{_row(node.args[1])}</mfrac>"
        case "**":
            return f"<msup>{_inside(node.args[0], 6)}{_exponent(node.args[1])}</msup>"
        case "sqrt":
            return f"<msqrt>{_part(node.args[0])}</msqrt>"
        case "neg":
            return f"<mo>&#8722;</mo>{_inside(node.args[0], 3)}"
        case "abs":
            return f"<mo>|</mo>{_part(node.args[0])}<mo>|</mo>"
        case "if":
            return _cases(node)
    if node.kind in _SIGNS:
        binds = _BINDS[node.kind]
        left, right = node.args
        if node.kind == "+" and right.kind == "neg":  # a + (-b) reads as a - b
            return f"{_inside(left, 2)}<mo>{_SIGNS['-']}</mo>{_inside(right.args[0], 3)}"
        return f"{_inside(left, binds)}<mo>{_SIGNS[node.kind]}</mo>{_inside(right, binds + (node.kind != '+'))}"
    word = "ln" if node.kind == "log" else node.kind
    return f"<mi>{word}</mi>{_brackets('<mo>,</mo>'.join(map(_part, node.args)))}"


def _exponent(node: Node) -> str:
    """An exponent: a quotient stands on one line there, where a fraction would be too small to read."""
    if node.kind != "/":
        return _row(node)
    return f"<mrow>{_inside(node.args[0], 3)}<mo>/</mo>{_inside(node.args[1], 4)}</mrow>"


def _cases(node: Node) -> str:
    test, one, other = node.args
    rows = f"<mtr><mtd>{_row(one)}</mtd><mtd><mtext>if&#160;</mtext>{_row(test)}</mtd></mtr>"
    rows += f"<mtr><mtd>{_row(other)}</mtd><mtd><mtext>otherwise</mtext></mtd></mtr>"
    return f"<mrow><mo>&#123;</mo><mtable>{rows}</mtable></mrow>"


def _row(node: Node) -> str:
    """A part as one element."""
    return _part(node) if node.kind in ("name", "/", "**", "sqrt") else f"<mrow>{_part(node)}</mrow>"


def _inside(node: Node, binds: int) -> str:
    """A part, in brackets where it binds less than what is around it."""
    if binds > 5 and node.kind == "/":  # the base of a power
        return _brackets(_part(node))
    return _brackets(_part(node)) if _BINDS.get(node.kind, 9) < binds else _row(node)


def _brackets(text: str) -> str:
    return f"<mrow><mo>(</mo>{text}<mo>)</mo></mrow>"
