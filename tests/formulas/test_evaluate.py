"""The arithmetic agrees with an independent walk that carries units, and undefined is NaN everywhere."""

from __future__ import annotations

import math
import operator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.evaluate import compiled
from bayleaf.formulas.language.grammar import parse
from bayleaf.formulas.language.proof import prove
from bayleaf.formulas.language.types import Type
from bayleaf.formulas.output.emit import body
from bayleaf.quantities.derive import registry
from tests.formulas.test_grammar import formulas
from tests.formulas.test_proof import KNOWN

UNITS = registry(float)
BASE = ("meter", "kilogram", "second", "kelvin", "ampere")
NAMES = list(KNOWN)


def run(text: str, values: dict[str, float]) -> float:
    known = {name: KNOWN.get(name, Type((0, 0, 0, 0, 0))) for name in values}
    _, plain = prove(parse(text), known)
    v = [*values.values(), math.nan]
    compiled(body(list(values), {}, {"made": plain}))(v)
    return v[-1]


COMPARED = {"<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge}


def with_units(node, values):
    """The tree as written, in pint quantities. References are arithmetic here: a vacuum is the barometer less a pressure."""
    args = [with_units(arg, values) for arg in node.args]
    match node.kind:
        case "number":
            return UNITS.Quantity(float(node.text), "")
        case "name":
            return UNITS.Quantity(math.pi, "") if node.text == "pi" else values[node.text]
        case "neg":
            return -args[0]
        case "+":
            return args[0] + args[1]
        case "-":
            return args[0] - args[1]
        case "*":
            return args[0] * args[1]
        case "/":
            return args[0] / args[1]
        case "**":
            return args[0] ** args[1].m_as("")
        case "sqrt":
            return args[0] ** 0.5
        case "exp":
            return UNITS.Quantity(math.exp(args[0].m_as("")), "")
        case "log":
            return UNITS.Quantity(math.log(args[0].m_as("")), "")
        case "abs":
            return abs(args[0])
        case "min":
            return min(args)
        case "max":
            return max(args)
        case "above_ambient":
            return args[0]
        case "absolute":
            return args[1] - args[0] if _is(node.args[0], "vacuum") else args[1] + args[0]
        case "gauge":
            return -args[0] if len(args) == 1 else args[0] - args[1]
        case "vacuum":
            return args[1] - args[0]
        case "if":
            return args[1] if args[0] else args[2]
    return COMPARED[node.kind](*args)


def _is(node, reference: str) -> bool:
    return prove(node, KNOWN)[0].reference == reference


@st.composite
def expressions(draw, kind: str = "pure", depth: int = 3) -> str:
    """A well-typed formula of a kind, over the names of KNOWN."""

    def sub(other: str) -> str:
        return draw(expressions(other, depth - 1))

    leaf = {
        "pure": ["x", "pi", "2", "0.5"],
        "absolute": ["b", "p"],
        "gauge": ["g", "h"],
        "vacuum": ["v"],
        "difference": ["d"],
        "temperature": ["t"],
        "flow": ["m"],
    }[kind]
    if depth == 0:
        return draw(st.sampled_from(leaf))
    ways = {
        "pure": lambda: (
            draw(
                st.sampled_from(
                    [
                        "({} + {})",
                        "({} * {})",
                        "({} - {})",
                        "({} / {})",
                        "max({}, {})",
                        "if({} < {}, x, 1)",
                        "min({}, {})",
                    ]
                )
            ).format(sub("pure"), sub("pure"))
            if draw(st.booleans())
            else draw(
                st.sampled_from(
                    [
                        f"({sub('absolute')} / {sub('absolute')})",
                        f"sqrt({sub('difference')} / {sub('absolute')})",
                        f"({sub('difference')} / {sub('difference')})",
                        f"exp({sub('pure')})",
                        f"log({sub('pure')})",
                        f"({sub('flow')} / {sub('flow')})",
                        f"({sub('pure')} ** {sub('pure')})",
                        f"abs(-{sub('pure')})",
                        f"(t / {sub('temperature')}) ** (1 / 3)",
                    ]
                )
            )
        ),
        "absolute": lambda: draw(
            st.sampled_from(
                [
                    f"absolute({sub('gauge')}, b)",
                    f"absolute({sub('vacuum')}, b)",
                    f"({sub('absolute')} + {sub('difference')})",
                    f"({sub('absolute')} * {sub('pure')})",
                    f"max({sub('absolute')}, {sub('absolute')})",
                ]
            )
        ),
        "gauge": lambda: draw(
            st.sampled_from(
                [f"gauge({sub('absolute')}, b)", f"gauge({sub('vacuum')})", f"({sub('gauge')} - {sub('difference')})"]
            )
        ),
        "vacuum": lambda: f"vacuum({sub('absolute')}, b)",
        "difference": lambda: draw(
            st.sampled_from(
                [
                    f"({sub('absolute')} - {sub('absolute')})",
                    f"({sub('gauge')} - {sub('gauge')})",
                    f"above_ambient({sub('gauge')})",
                    f"-{sub('difference')}",
                    f"({sub('difference')} / {sub('pure')})",
                ]
            )
        ),
        "temperature": lambda: f"({sub('temperature')} * {sub('pure')} + dt)",
        "flow": lambda: draw(
            st.sampled_from([f"({sub('flow')} + m)", f"sqrt({sub('flow')} * m)", f"(m ** 2 / {sub('flow')})"])
        ),
    }
    return ways[kind]()


values = st.fixed_dictionaries({name: st.floats(0.25, 4).map(lambda x: round(x, 3)) for name in NAMES})


@settings(derandomize=True, max_examples=120, deadline=None)
@given(st.sampled_from(["pure", "absolute", "gauge", "difference", "temperature", "flow"]).flatmap(expressions), values)
def test_a_proved_formula_agrees_with_a_walk_in_pint_quantities(text, numbers):
    type, _ = prove(parse(text), KNOWN)
    carried = {name: UNITS.Quantity(numbers[name], _unit(KNOWN[name].dimension)) for name in NAMES}
    try:
        expected = with_units(parse(text), carried).to_base_units()
        assert expected.is_compatible_with(_unit(type.dimension)), text
        expected = expected.magnitude
        defined = not isinstance(expected, complex) and math.isfinite(expected)
    except (ZeroDivisionError, OverflowError, ValueError, TypeError):  # TypeError: a complex number compared
        defined = False
    got = run(text, numbers)
    if defined and math.isfinite(got):
        # pint adds in another order through powers; what nearly cancels is compared to the size of what it came from
        assert got == pytest.approx(expected, rel=1e-9, abs=1e-9), text
    elif defined:
        assert not _stays_real(parse(text), carried), text
    else:
        assert math.isnan(got), text


def _unit(dimension) -> str:
    return "*".join(f"{base}**{float(power)}" for base, power in zip(BASE, dimension)) or ""


def _stays_real(node, carried) -> bool:
    """No part is complex or infinite: Python lets a complex part cancel out, this book does not."""
    for part in (node, *node.args):
        if part.kind in ("<", "<=", ">", ">="):
            continue
        try:
            value = with_units(part, carried)
        except (ZeroDivisionError, OverflowError, ValueError, TypeError):
            return False
        if isinstance(value.magnitude, complex) or not math.isfinite(value.magnitude):
            return False
    return all(_stays_real(arg, carried) for arg in node.args)


@pytest.mark.parametrize(
    "text",
    [
        " + ".join("x" * 100),
        " / ".join("x" * 100),
        "-" * 20 + "x",
        "x" + " - -x" * 60,
        "min(x, " * 20 + "x" + ")" * 20,
        "sqrt(" * 20 + "x" + ")" * 20,
    ],
)
def test_the_longest_formulas_that_are_allowed_still_run(text):
    assert math.isfinite(run(text, {"x": 2.0}))


@settings(derandomize=True)
@given(formulas, st.floats(), st.floats())
def test_a_formula_that_is_proved_never_raises_whatever_its_values(text, a, b1):
    try:
        got = run(text, {"a": a, "b1": b1})
    except FormulaError:
        return
    assert math.isnan(got) or math.isfinite(got)


@pytest.mark.parametrize(
    ("text", "x"),
    [
        ("1 / x", 0),
        ("log(x)", 0),
        ("log(x)", -1),
        ("sqrt(x)", -1),
        ("x ** 0.5", -1),
        ("x ** -1", 0),
        ("x ** x", -0.5),
        ("exp(x)", 1e4),
        ("(x ** 8) ** 8", 1e10),
        ("x * x", 1e200),
        ("1 / (1 / x)", 0),
        ("(1 / x) ** 0", 0),
        ("1 ** (1 / x)", 0),
        ("min(1 / x, 1)", 0),
        ("max(1, 1 / x)", 0),
        ("if(1 / x < 1, 1, 2)", 0),
        ("0 * (1 / x)", 0),
        ("abs(1 / x)", 0),
    ],
)
def test_what_is_undefined_is_nan_and_spreads(text, x):
    assert math.isnan(run(text, {"x": float(x)}))


def test_the_side_of_an_if_that_is_not_chosen_may_be_undefined():
    assert run("if(x > 0, 1 / x, 2)", {"x": 0.0}) == 2.0
