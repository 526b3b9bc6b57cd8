"""The script of a page answers as Python does. It is run by the node that comes with the browser driver."""

from __future__ import annotations

import json
import math
import random
import subprocess

import pytest
from playwright._impl._driver import compute_driver_executable

from bayleaf.formulas.language.evaluate import OPERATIONS
from bayleaf.formulas.output.javascript import CONVERSIONS, script, unit_table
from bayleaf.formulas.output.javascript import OPERATIONS as SCRIPTED
from bayleaf.quantities import from_si, significant, to_si, units
from tests.formulas.samples import ALL, calculator, samples

CALCULATORS = {id: calculator(data) for id, data in ALL.items()}


def node(code: str):
    """What a script prints, from JSON; null stands for NaN."""
    program = str(compute_driver_executable()[0])
    done = subprocess.run([program, "-"], input=code, capture_output=True, text=True, check=True)
    return json.loads(done.stdout, parse_int=float)  # JavaScript writes whole floats as integers


@pytest.mark.parametrize("id", CALCULATORS)
def test_python_and_javascript_agree_on_every_line(id):
    calc = CALCULATORS[id]
    given = list(samples(calc, 2000))
    code = script({id: calc}) + f"console.log(JSON.stringify({json.dumps(given)}.map(bayleaf.run[{json.dumps(id)}])))"
    for values, theirs in zip(given, node(code), strict=True):
        for ours, other in zip(calc.run(values), theirs, strict=True):
            # pow, exp and log may differ in the last bit, and a line may carry that on
            assert math.isnan(ours) == (other is None), values
            assert other is None or ours == pytest.approx(
                other, rel=1e-12, abs=1e-300 + 1e-13 * max(map(abs, values))
            ), values


def test_arithmetic_without_powers_agrees_to_the_bit():
    for id in ("regulator", "flow"):
        calc = CALCULATORS[id]
        given = list(samples(calc, 2000, seed=2))
        theirs = node(
            script({id: calc}) + f"console.log(JSON.stringify({json.dumps(given)}.map(bayleaf.run[{json.dumps(id)}])))"
        )
        assert [calc.run(values) for values in given] == theirs


def test_both_languages_have_the_same_operations():
    assert sorted(OPERATIONS) == sorted(line.split("(")[0].removeprefix("function ") for line in SCRIPTED.splitlines())


def test_shown_numbers_round_alike():
    numbers = [k / 8 for k in range(-400, 400)] + [
        10.0**k * m for k in range(-9, 12) for m in (1.005, 2.5, 9.995, 1234.5)
    ]
    asked = [(x, digits) for x in numbers for digits in (1, 2, 3, 5)]
    code = (
        script({})
        + f"console.log(JSON.stringify({json.dumps(asked)}.map(function (a) {{ return bayleaf.significant(a[0], a[1]); }})))"
    )
    assert node(code) == [significant(x, digits) for x, digits in asked]


def test_units_convert_alike():
    calc = CALCULATORS["compressor"]
    symbols = [(symbol, one.quantity.reference) for one in calc.inputs.values() for symbol in one.quantity.symbols()]
    asked = [(value, *pair) for pair in symbols for value in (-40, 0, 1.1, 25, 43.5, 101.3)]
    call = "function (a) { return [bayleaf.to_si(a[0], a[1], a[2]), bayleaf.from_si(a[0], a[1], a[2])]; }"
    theirs = node(script({"c": calc}) + f"console.log(JSON.stringify({json.dumps(asked)}.map({call})))")
    for one, (there, back) in zip(asked, theirs, strict=True):
        assert there == pytest.approx(to_si(*one), rel=1e-15)
        assert back == from_si(*one)


def test_conversions_from_si_agree_to_the_bit():
    chance = random.Random(3)
    asked = [(chance.uniform(-1, 1) * 10 ** chance.randint(-9, 15), symbol) for symbol in units() for _ in range(50)]
    call = "function (a) { return from_si(a[0], a[1], 'absolute'); }"
    code = (
        f"var units = {unit_table(units())};\n{CONVERSIONS}console.log(JSON.stringify({json.dumps(asked)}.map({call})))"
    )
    assert node(code) == [from_si(x, symbol, "absolute") for x, symbol in asked]
