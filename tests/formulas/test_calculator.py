"""A record becomes a calculator only when everything in it closes."""

from __future__ import annotations

import copy

import pytest
from fluids.compressible import isentropic_T_rise_compression
from scipy.constants import psi

from bayleaf.formulas.language.errors import FormulaError
from tests.formulas.samples import BAROMETER, BOOST, COMPRESSOR, calculator, record

PURE = ("ratio", "1", 1, 0, 10)
OUT = ("ratio", "1", 3)


def simple(formula: dict, inputs: dict | None = None, **more) -> dict:
    return record(inputs or {"x": PURE}, formula, {next(iter(formula)): OUT}, **more)


def changed(path: tuple, value) -> dict:
    data = copy.deepcopy(COMPRESSOR)
    at = data
    for key in path[:-1]:
        at = at[key]
    at[path[-1]] = value
    return data


def test_lines_stand_in_the_order_they_need_each_other_otherwise_as_written():
    calc = calculator(simple({"last": "b + x", "b": "c * 2", "c": "x + 1"}))
    assert list(calc.lines) == ["c", "b", "last"]
    as_written = {"a": "x + 1", "b": "x + 2", "c": "a + b"}
    assert list(calculator(record({"x": PURE}, as_written, {"c": OUT})).lines) == ["a", "b", "c"]


# The same case by an independent library: fluids, isentropic compression with an efficiency.
def test_inputs_left_out_stand_at_their_defaults():
    lines = calculator(COMPRESSOR).evaluate()
    after = 101300 + 10 * psi
    assert lines["ratio"] == pytest.approx(after / 101300)
    assert lines["outlet"] == pytest.approx(isentropic_T_rise_compression(298.15, 101300, after, 1.4, 0.7))


def test_an_input_is_read_in_any_unit_of_its_quantity_within_its_limits():
    calc = calculator(COMPRESSOR)
    assert calc.si("boost", 1, "bar") == 100000.0
    assert calc.si("inlet", 77, "degF") == 298.15
    assert calc.si("boost", 45, "psi") == calc.inputs["boost"].high


@pytest.mark.parametrize(
    ("name", "value", "unit", "says"),
    [
        ("boost", 46, "psi", "it may be 0 to 45 psi"),
        ("inlet", -41, "degC", "it may be -40 to 60 °C"),
        ("bost", 1, "psi", "no input bost"),
        ("boost", 1, "psig", "write psi; gauge or absolute is a field"),
        ("boost", float("nan"), "psi", "boost is nan psi"),
    ],
)
def test_an_input_that_cannot_be_gets_one_line(name, value, unit, says):
    with pytest.raises(FormulaError) as caught:
        calculator(COMPRESSOR).si(name, value, unit)
    assert says in str(caught.value)


def test_an_unknown_input_is_not_ignored():
    with pytest.raises(FormulaError, match="there is no input bost"):
        calculator(COMPRESSOR).evaluate({"bost": 1.0})


def test_a_result_is_shown_in_its_own_unit_and_the_other():
    result = calculator(COMPRESSOR).results["outlet"]
    assert result.shown(366.26) == "93.1 °C (200 °F)"
    assert result.shown(float("nan")) == "undefined"


@pytest.mark.parametrize(
    ("path", "value", "says", "at"),
    [
        (
            ("inputs", "boost", "quantity"),
            "boost-presure",
            "did you mean boost-pressure?",
            ("inputs", "boost", "quantity"),
        ),
        (("inputs", "boost", "unit"), "psig", "write psi", ("inputs", "boost", "unit")),
        (("inputs", "boost", "default"), 50, "outside its limits", ("inputs", "boost", "default")),
        (("inputs", "boost", "min"), 45, "is not below max", ("inputs", "boost", "min")),
        (("inputs", "boost", "max"), 4500, "not plausible", ("inputs", "boost", "max")),
        (("constants", "gamma", "value"), 14, "not plausible", ("constants", "gamma", "value")),
        (("constants", "gamma", "unit"), "psi", "not a unit of", ("constants", "gamma", "unit")),
        (
            ("formula", "ratio"),
            "(boost + barometer) / barometer",
            "a gauge pressure + an absolute pressure",
            ("formula", "ratio"),
        ),
        (("formula", "ratio"), "absolute(bost, barometer) / barometer", "did you mean boost?", ("formula", "ratio")),
        (("formula", "ratio"), "absolute(boost, barometer", "is open", ("formula", "ratio")),
        (("formula", "idle"), "ratio + 1", "idle is used nowhere", ("formula", "idle")),
        (("formula", "boost"), "ratio + 1", "already a name in inputs", ("formula", "boost")),
        (("formula", "pi"), "ratio + 1", "a word of the formula language", ("formula", "pi")),
        (
            ("result", "outlet"),
            {"quantity": "temperature-difference", "unit": "delta_degC", "digits": 3},
            "comes out as an absolute temperature",
            ("result", "outlet", "quantity"),
        ),
        (("result", "outlet", "unit"), "C", "write degC", ("result", "outlet", "unit")),
        (("result", "outlat"), {}, "did you mean outlet?", ("result", "outlat")),
        (("table", "rows"), {"bost": [1]}, "did you mean boost?", ("table", "rows", "bost")),
        (("table", "rows"), {"efficiency": [60]}, "both sides", ("table", "columns")),
        (("table", "rows"), {"boost": list(range(700))}, "a table of 2100 cells", ("table",)),
        (("table", "result"), "outlat", "did you mean outlet?", ("table", "result")),
        (("table",), {"rows": {"boost": [1]}}, "which result is meant", ("table",)),
        (("chart", "x"), "bost", "did you mean boost?", ("chart", "x")),
        (("chart", "lines"), "inlet", "no values in the table", ("chart", "lines")),
        (("chart",), {"x": "inlet", "result": "outlet"}, "inlet has no values in the table", ("chart", "x")),
        (
            ("chart",),
            {"x": "boost", "results": ["outlet", "ratio"]},
            "results in 1 and in degC on one chart",
            ("chart", "results"),
        ),
        (("chart",), {"x": "boost", "results": ["outlet", "outlat"]}, "did you mean outlet?", ("chart", "results", 1)),
        (
            ("chart",),
            {"x": "boost", "lines": "efficiency", "results": ["outlet", "outlet"]},
            "results and lines together",
            ("chart", "lines"),
        ),
        (
            ("table",),
            {"rows": {"boost": [1]}, "columns": {"efficiency": [60]}, "results": ["outlet", "ratio"]},
            "results and columns together",
            ("table", "columns"),
        ),
        (("table", "columns"), {"efficiency": list(range(40, 80, 3))}, "a chart of 14 lines", ("chart",)),
        (("chart", "range"), {"min": 10, "max": 5}, "min 10 is not below max 5", ("chart", "range", "min")),
        (("chart", "range"), {"min": 0, "max": 50}, "50 is outside the limits of boost", ("chart", "range", "max")),
    ],
)
def test_what_is_wrong_in_a_record_is_said_at_its_field(path, value, says, at):
    with pytest.raises(FormulaError) as caught:
        calculator(changed(path, value))
    assert says in str(caught.value)
    assert caught.value.path == at
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("formula", "says"),
    [
        ({"a": "a + x"}, "a circle of lines: a needs a"),
        ({"a": "b + x", "b": "c", "c": "b"}, "b needs c needs b"),
        ({"a": "x", "b": "2"}, "b is used nowhere"),
        ({"a": "2"}, "x is used nowhere"),
    ],
)
def test_circles_and_idle_parts_are_refused(formula, says):
    with pytest.raises(FormulaError, match=says):
        calculator(simple(formula))


def test_a_calculator_has_a_greatest_size():
    long = {"a": " + ".join(f"l{n}" for n in range(41))} | {f"l{n}": "x" for n in range(41)}
    with pytest.raises(FormulaError, match="more than 40 lines"):
        calculator(simple(long))
    heavy = {"a": " + ".join(f"l{n}" for n in range(20))} | {f"l{n}": " + ".join(["sqrt(x)"] * 25) for n in range(20)}
    with pytest.raises(FormulaError, match="over 2000 operations"):
        calculator(simple(heavy))


def test_the_place_in_the_expression_is_kept():
    with pytest.raises(FormulaError) as caught:
        calculator(changed(("formula", "ratio"), "barometer / (boost + barometer)"))
    assert (caught.value.offset, caught.value.length) == (12, 19)


def test_names_that_mean_something_elsewhere_are_only_names():
    names = ["in", "new", "v", "given", "class", "keep", "none", "import", "constructor"]
    calc = calculator(record(dict.fromkeys(names, PURE), {"this": " + ".join(names)}, {"this": OUT}))
    assert calc.evaluate()["this"] == len(names)
    assert "constructor" not in calc.javascript()


def test_a_free_pressure_takes_the_declared_reference():
    inputs = {"density": ("air-density", "kg/m3", 1.2, 0.5, 3), "inlet": ("air-temperature", "degC", 25, -40, 60)}
    constants = {"gas": ("specific-gas-constant", "J/kg/K", 287.05)}
    for quantity in ("manifold-pressure", "air-pressure-drop"):
        calc = calculator(record(inputs, {"p": "density * gas * inlet"}, {"p": (quantity, "kPa", 3)}, constants))
        assert calc.evaluate()["p"] == pytest.approx(1.2 * 287.05 * 298.15)


def test_gauge_and_vacuum_meet_over_the_barometer():
    inputs = {"boost": BOOST, "barometer": BAROMETER, "manifold": ("manifold-vacuum", "inHg", 18, 0, 25)}
    formula = {"span": "absolute(boost, barometer) - absolute(manifold, barometer)"}
    calc = calculator(record(inputs, formula, {"span": ("pressure-difference", "kPa", 3)}))
    assert calc.evaluate()["span"] == pytest.approx(10 * 6894.757 + 18 * 3386.389, rel=1e-6)
