"""Worked checks: a published number is reproduced, or it is not."""

from __future__ import annotations

import pytest

from bayleaf.formulas.calculator.worked import run_checks
from bayleaf.formulas.language.errors import FormulaError
from tests.formulas.samples import COMPRESSOR, calculator

CALC = calculator(COMPRESSOR)


def check(given=("boost", 10, "psi"), gives=("outlet", 93.1, "degC"), within=(0.2, "delta_degC")) -> list:
    name, value, unit = given
    line, wanted, shown = gives
    entry = {
        "given": {name: {"value": value, "unit": unit}},
        "gives": {line: {"value": wanted, "unit": shown, "within": dict(zip(("value", "unit"), within))}},
    }
    return run_checks(CALC, {"checks": [entry]})


# By hand: (1 + 68.948 / 101.3) ** (0.4 / 1.4) is 1.15990; 298.15 * (1 + 0.15990 / 0.7) is 366.26 K, 93.11 °C.
def test_a_number_within_its_tolerance_is_reproduced():
    (made,) = check()
    assert (made.place, made.line, made.unit, made.ok) == (0, "outlet", "degC", True)
    assert made.got == pytest.approx(93.11, abs=0.01)
    assert made.within == pytest.approx(0.2)


def test_a_number_outside_its_tolerance_is_not():
    assert not check(gives=("outlet", 93.5, "degC"))[0].ok
    assert not check(within=(0.005, "delta_degC"))[0].ok


def test_a_check_may_use_other_units_than_the_record():
    (made,) = check(given=("boost", 68.94757, "kPa"), gives=("outlet", 199.6, "degF"), within=(0.05, "delta_degF"))
    assert made.ok and made.unit == "degF"


@pytest.mark.parametrize(
    ("given", "gives", "within", "at"),
    [
        (("bost", 10, "psi"), ("outlet", 93, "degC"), (1, "K"), ("checks", 0, "given", "bost")),
        (("boost", 99, "psi"), ("outlet", 93, "degC"), (1, "K"), ("checks", 0, "given", "boost")),
        (("boost", 10, "psig"), ("outlet", 93, "degC"), (1, "K"), ("checks", 0, "given", "boost")),
        (("boost", 10, "psi"), ("outlat", 93, "degC"), (1, "K"), ("checks", 0, "gives", "outlat")),
        (("boost", 10, "psi"), ("outlet", 93, "C"), (1, "K"), ("checks", 0, "gives", "outlet")),
        (("boost", 10, "psi"), ("outlet", 93, "degC"), (1, "degC"), ("checks", 0, "gives", "outlet")),
    ],
)
def test_a_check_that_makes_no_sense_is_said_at_its_field(given, gives, within, at):
    with pytest.raises(FormulaError) as caught:
        check(given, gives, within)
    assert caught.value.path == at
