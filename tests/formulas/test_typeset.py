"""Formulas are set from their trees: well formed, in ASCII, with brackets only where they are needed."""

from __future__ import annotations

from xml.etree.ElementTree import fromstring

import pytest
from hypothesis import given, settings

from bayleaf.formulas.language.grammar import parse
from bayleaf.formulas.language.proof import prove
from bayleaf.formulas.output.typeset import mathml, typeset
from tests.formulas.samples import ALL, calculator
from tests.formulas.test_evaluate import expressions
from tests.formulas.test_proof import KNOWN

ELEMENTS = {"math", "mrow", "mi", "mn", "mo", "mfrac", "msup", "msqrt", "mtable", "mtr", "mtd", "mtext"}


def words(text: str) -> str:
    """What a formula shows, read from left to right."""
    return "".join(fromstring(mathml("y", prove(parse(text), KNOWN)[1])).itertext()).removeprefix("y=")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("absolute(g, b) / b", "g+bb"),
        ("absolute(v, b)", "b−v"),
        ("gauge(v)", "−v"),
        ("above_ambient(g)", "g"),
        ("g + above_ambient(gauge(v))", "g−v"),
        ("x * (x + 1)", "x×(x+1)"),
        ("x - (x - 1)", "x−(x−1)"),
        ("x - x - 1", "x−x−1"),
        ("(x + 1) ** 2", "(x+1)2"),
        ("(x / 2) ** 2", "(x2)2"),
        ("x ** (1 / 2)", "x1/2"),
        ("x ** -2", "x−2"),
        ("x ** ((x - 1) / (2 * x))", "x(x−1)/(2×x)"),
        ("-(x + 1)", "−(x+1)"),
        ("x * -x", "x×(−x)"),
        ("(-x) ** 2", "(−x)2"),
        ("-x ** 2", "−x2"),
        ("min(x, 1)", "min(x,1)"),
        ("log(x)", "ln(x)"),
        ("sqrt(x + 1)", "x+1"),
        ("if(x <= 0, 1, x)", "{1if\u00a0x≤0xotherwise"),
        ("2 * pi", "2×π"),
        ("abs(x)", "|x|"),
        ("(x ** 2) ** 3", "(x2)3"),
    ],
)
def test_a_formula_reads_as_its_arithmetic(text, shown):
    assert words(text) == shown


def test_the_plain_text_is_the_formula_as_written():
    lines = typeset(calculator(ALL["compressor"]))
    assert lines[0].plain == "ratio = absolute(boost, barometer) / barometer"
    assert "<mi>outlet</mi>" in lines[1].mathml


@settings(derandomize=True, max_examples=60, deadline=None)
@given(expressions("pure", 3))
def test_markup_is_well_formed_ascii_of_known_elements(text):
    markup = mathml("set_pressure", prove(parse(text), KNOWN)[1])
    assert markup.isascii() and "\n" not in markup and "{" not in markup
    assert {part.tag for part in fromstring(markup).iter()} <= ELEMENTS
