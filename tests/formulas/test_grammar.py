"""The parser reads the grammar and nothing else, and says where it stopped."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.grammar import MAX_DEPTH, parse
from bayleaf.formulas.language.tokens import FUNCTIONS, MAX_LENGTH, MAX_TOKENS
from bayleaf.formulas.language.tree import nodes


def shape(node) -> str:
    """A tree with every bracket written."""
    return node.text or f"({node.kind} {' '.join(map(shape, node.args))})"


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        ("a - b - c", "(- (- a b) c)"),
        ("a / b * c", "(* (/ a b) c)"),
        ("a + b * c", "(+ a (* b c))"),
        ("-x ** 2", "(neg (** x 2))"),
        ("2 ** -x", "(** 2 (neg x))"),
        ("2 ** 3 ** x", "(** 2 (** 3 x))"),
        ("-a * b", "(* (neg a) b)"),
        ("a * -b", "(* a (neg b))"),
        ("- - a", "(neg (neg a))"),
        ("(a)", "a"),
        ("(a + b) * c", "(* (+ a b) c)"),
        ("a ** -b ** 2", "(** a (neg (** b 2)))"),
        ("a - -b", "(- a (neg b))"),
        ("if(a <= b, 1, 0.5)", "(if (<= a b) 1 0.5)"),
        ("min(a, b, c)", "(min a b c)"),
        (" a\n+\tb ", "(+ a b)"),
    ],
)
def test_operators_bind_as_in_algebra(text, tree):
    assert shape(parse(text)) == tree


@pytest.mark.parametrize(
    ("text", "offset", "says"),
    [
        ("", 0, "an empty formula"),
        ("   ", 0, "an empty formula"),
        ("a +", 3, "the end where a value must come"),
        ("(a", 2, "the bracket at 1 is open"),
        ("a)", 1, "a bracket too many"),
        ("a b", 2, "an operator is missing"),
        ("a ^ 2", 2, "write **"),
        ("a = b", 2, "the line's name stands before the colon"),
        ("2x", 1, "write 2 * x"),
        ("1e3", 1, "12e3 belongs in constants"),
        (".5", 0, "as 0.5"),
        ("5. * a", 1, "right after a number"),
        ("1..2", 1, "right after a number"),
        ("A + b", 0, "names are small letters"),
        ("a.b", 1, "has no meaning"),
        ("a[0]", 1, "use ( )"),
        ("f(x)", 0, "there is no function f"),
        ("sqrt", 0, "write sqrt( )"),
        ("min(a)", 0, "it takes 2 to 8"),
        ("sqrt(a, b)", 0, "it takes 1"),
        ("if(a, b)", 0, "it takes 3"),
        ("a < b < c", 6, "two comparisons"),
        ("a, b", 1, "could end"),
        ("()", 1, "where a value must come"),
        ("sqrt()", 5, "where a value must come"),
        ("a // b", 3, "where a value must come"),
        ("a % b", 2, "give the input the unit %"),
        ("__import__('os')", 0, "a name starts with a letter"),
        ("a.__class__", 1, "has no meaning"),
        ("lambda: 0", 6, "has no meaning"),
        ("'a'", 0, "has no meaning"),
        ("a;b", 1, "has no meaning"),
        ("a\u202eb", 1, "U+202E"),
        ("a\u00a0+ b", 1, "U+00A0"),
        ("\u0430 + b", 0, "U+0430 CYRILLIC"),
        ("3\u00b2", 1, "U+00B2"),
        ("\u0663 + a", 0, "U+0663"),
        ("a × b", 2, "write *"),
        ("a\0", 1, "U+0000"),
        ("x" * (MAX_LENGTH + 1), MAX_LENGTH, "longer than"),
        ("+".join("a" * 101), MAX_TOKENS, "longer than"),
        ("(" * 40 + "a" + ")" * 40, MAX_DEPTH, "nested deeper"),
        ("-" * 40 + "a", MAX_DEPTH, "nested deeper"),
        ("2 ** " * 40 + "a", MAX_DEPTH * 5, "nested deeper"),
        ("sqrt(" * 40 + "a" + ")" * 40, MAX_DEPTH * 5, "nested deeper"),
    ],
)
def test_a_bad_formula_gets_one_line_and_its_place(text, offset, says):
    with pytest.raises(FormulaError) as caught:
        parse(text)
    assert says in str(caught.value)
    assert caught.value.offset == offset
    assert "\n" not in str(caught.value)


formulas = st.lists(
    st.sampled_from(
        [
            "a",
            "b1",
            "pi",
            "0",
            "0.5",
            "17",
            "**",
            "*",
            "/",
            "-",
            "+",
            "<",
            ">=",
            "(",
            ")",
            ",",
            " ",
            *FUNCTIONS,
            "(",
            "é",
            "1e9",
        ]
    ),
    max_size=60,
).map("".join)


@given(st.one_of(st.text(max_size=60), formulas))
@example("9" * 1999)
def test_the_parser_raises_nothing_but_a_formula_error_with_an_offset_in_the_text(text):
    tree, error = _read(text)
    if error is not None:
        assert 0 <= error.offset <= len(text)
        return
    for node in nodes(tree):
        assert 0 <= node.start < node.end <= len(text)


def _read(text):
    """The tree of a formula and None, or None and the complaint."""
    try:
        return parse(text), None
    except FormulaError as err:
        return None, err


@given(formulas)
def test_a_tree_written_with_every_bracket_reads_as_the_same_tree(text):
    tree, error = _read(text)
    again, deeper = _read(_written(tree)) if tree else (None, error)
    if again is None:
        assert deeper.message  # too deep once every bracket is written, or not a formula at all
    else:
        assert shape(again) == shape(tree)


def _written(node) -> str:
    if node.text:
        return node.text
    args = [_written(arg) for arg in node.args]
    if node.kind in FUNCTIONS:
        return f"{node.kind}({', '.join(args)})"
    return f"(-{args[0]})" if node.kind == "neg" else f"({args[0]} {node.kind} {args[1]})"
