"""The typing table: what may meet what, and what comes out."""

from __future__ import annotations

import pytest

from bayleaf.formulas.language.errors import FormulaError
from bayleaf.formulas.language.grammar import parse
from bayleaf.formulas.language.proof import prove
from bayleaf.formulas.language.types import PRESSURE, TEMPERATURE, Type

KNOWN = {
    "b": Type(PRESSURE, "absolute"),
    "p": Type(PRESSURE, "absolute"),
    "g": Type(PRESSURE, "gauge"),
    "h": Type(PRESSURE, "gauge"),
    "v": Type(PRESSURE, "vacuum"),
    "d": Type(PRESSURE, "difference"),
    "t": Type(TEMPERATURE, "absolute"),
    "dt": Type(TEMPERATURE, "difference"),
    "x": Type((0, 0, 0, 0, 0)),
    "r": Type((2, 0, -2, -1, 0)),
    "rho": Type((-3, 1, 0, 0, 0)),
    "s": Type((0, 0, 1, 0, 0)),
    "m": Type((0, 1, -1, 0, 0)),
}

GOOD = {
    "d + d": "difference",
    "d - d": "difference",
    "b + d": "absolute",
    "d + b": "absolute",
    "b - d": "absolute",
    "g + d": "gauge",
    "d + g": "gauge",
    "g - d": "gauge",
    "b - p": "difference",
    "g - h": "difference",
    "t - t": "difference",
    "t + dt": "absolute",
    "absolute(g, b)": "absolute",
    "absolute(v, b)": "absolute",
    "gauge(p, b)": "gauge",
    "gauge(v)": "gauge",
    "vacuum(p, b)": "vacuum",
    "above_ambient(g)": "difference",
    "b * x": "absolute",
    "x * b": "absolute",
    "b / 2": "absolute",
    "d * x": "difference",
    "-d": "difference",
    "abs(d)": "difference",
    "t * (1 + x)": "absolute",
    "rho * r * t": "free",
    "b + rho * r * dt": "absolute",
    "b - rho * r * dt": "absolute",
    "d + rho * r * dt": "free",
    "sqrt(b * b)": "free",
    "b * b / b": "free",
    "min(b, p)": "absolute",
    "max(v, 0)": "vacuum",
    "min(g, h, 0)": "gauge",
    "if(g < 0, h, g)": "gauge",
    "if(v > 0, b, p)": "absolute",
    "if(d < rho * r * t, 0, d)": "difference",
    "b ** 1": "absolute",
    "b / p": "none",
    "sqrt(d / p)": "none",
    "x ** x": "none",
    "x ** (x - 1)": "none",
    "b ** 2": "none",
    "s ** (1 / 2)": "none",
    "s ** -0.25": "none",
    "exp(x)": "none",
    "log(b / p)": "none",
    "exp(dt / t)": "none",
    "1 / b": "none",
    "m * s": "none",
    "pi * x": "none",
    "2 ** 7.5": "none",
    "min(0, 0)": "none",
    "m + m": "none",
    "-m": "none",
}

BAD = {
    "g + b": "a gauge pressure + an absolute pressure",
    "b + g": "an absolute pressure + a gauge pressure",
    "b + b": "an absolute pressure + an absolute pressure",
    "g + g": "a gauge pressure + a gauge pressure",
    "v + d": "a vacuum pressure + a pressure difference",
    "v - v": "a vacuum pressure - a vacuum pressure",
    "b - v": "convert first",
    "b - g": "convert first",
    "d - b": "a pressure difference - an absolute pressure",
    "d - g": "convert first",
    "t + t": "an absolute temperature",
    "b + s": "both sides need one dimension",
    "b + 1": "an absolute pressure + a pure number",
    "d + 0": "both sides need one dimension",
    "m + s": "one dimension",
    "2 * g": "its zero is not zero",
    "g / b": "its zero is not zero",
    "b / g": "its zero is not zero",
    "v * x": "its zero",
    "sqrt(g)": "its zero is not zero",
    "g ** 2": "its zero is not zero",
    "-g": "minus a gauge pressure",
    "-v": "gauge( ) of a vacuum is its negative",
    "-b": "minus an absolute pressure",
    "abs(g)": "abs of a gauge pressure",
    "absolute(p, b)": "an absolute pressure is absolute already",
    "gauge(g, b)": "a gauge pressure is gauge already",
    "vacuum(v, b)": "is vacuum already",
    "absolute(d, b)": "it takes a gauge pressure or a vacuum",
    "absolute(rho * r * t, b)": "it takes a gauge pressure or a vacuum",
    "absolute(g, h)": "the second value is an absolute",
    "gauge(p)": "it takes an absolute pressure and the barometer",
    "gauge(v, b)": "or a vacuum alone",
    "vacuum(g, b)": "it takes an absolute pressure",
    "above_ambient(b)": "it takes a gauge pressure alone",
    "absolute(t, b)": "it takes a gauge pressure",
    "exp(b)": "it takes a pure number",
    "log(s)": "it takes a pure number",
    "x ** s": "a time as an exponent",
    "x ** b": "as an exponent",
    "b ** x": "not written out",
    "s ** (x)": "not written out",
    "x ** 9": "8 is the greatest",
    "2 ** (3 * 3)": "8 is the greatest",
    "x ** -8.5": "8 is the greatest",
    "min(b, g)": "all values here need one dimension and one reference",
    "max(b, d)": "one reference",
    "min(x, s)": "one dimension",
    "if(b < g, 1, 2)": "a gauge pressure beside an absolute pressure",
    "if(x < 1, b, g)": "one reference",
    "if(x < s, 1, 2)": "one dimension",
    "if(x, 1, 2)": "if( ) without a comparison",
    "x < 1": "outside if( )",
    "(x < 1) + 1": "outside if( )",
    "if(1 < (x < 1), 1, 2)": "outside if( )",
    "1.4 * x": "1.4 needs a basis",
    "x + 5": "5 needs a basis",
    "x ** (x - 1.4)": "needs a basis",
    "q + 1": "nothing is called q",
    "rh * r": "did you mean rho?",
}


@pytest.mark.parametrize("text", GOOD)
def test_what_closes_has_the_reference_it_should(text):
    type, _ = prove(parse(text), KNOWN)
    assert type.reference == GOOD[text]


@pytest.mark.parametrize("text", BAD)
def test_what_does_not_close_is_refused_in_one_line(text):
    with pytest.raises(FormulaError) as caught:
        prove(parse(text), KNOWN)
    assert BAD[text] in str(caught.value)
    assert 0 <= caught.value.offset < len(text)
    assert "\n" not in str(caught.value)


def test_dimensions_come_out_of_products_roots_and_powers():
    assert prove(parse("sqrt(d / rho)"), KNOWN)[0].dimension == (1, 0, -1, 0, 0)
    assert prove(parse("rho * r * t"), KNOWN)[0].dimension == PRESSURE
    assert prove(parse("(m / s) ** (1 / 2) * s"), KNOWN)[0].dimension[2] == 0


def test_the_place_of_an_error_is_the_part_that_is_wrong():
    with pytest.raises(FormulaError) as caught:
        prove(parse("x * (g + b) / x"), KNOWN)
    assert (caught.value.offset, caught.value.length) == (4, 7)
