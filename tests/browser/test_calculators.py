"""The page's arithmetic and Python's: thousands of random inputs for each calculator through a real Chromium."""

from __future__ import annotations

import json
import math
import random

import pytest

from bayleaf.formulas.output.javascript import script
from bayleaf.quantities import from_si, significant, to_si, units
from tests.reference.outside import book, calculator

IDS = sorted(book().of("calculators"))
COUNT = 2000


@pytest.fixture(scope="module")
def browser(chromium):
    """A page in which the script of all calculators has run."""
    page = chromium.new_page()
    page.goto("about:blank")
    page.add_script_tag(content=script({id: calculator(id) for id in IDS}))
    yield page
    page.close()


def inputs(id: str) -> list[list[float]]:
    """Random values in SI: inside the limits, on them, and a third of them well outside, where much is undefined."""
    dice, found = random.Random(id), []
    for _ in range(COUNT):
        wide = dice.choice((0.0, 0.0, 1.0))
        row = []
        for one in calculator(id).inputs.values():
            span = one.high - one.low
            row.append(
                dice.choice(
                    (one.low, one.high, one.default, *[dice.uniform(one.low - wide * span, one.high + wide * span)] * 7)
                )
            )
        found.append(row)
    return found


def difference(a: float, b: float) -> float:
    """Relative difference; two undefined values are the same."""
    if math.isnan(a) or math.isnan(b):
        return 0.0 if math.isnan(a) and math.isnan(b) else math.inf
    return 0.0 if a == b else abs(a - b) / max(abs(a), abs(b))


@pytest.mark.parametrize("id", IDS)
def test_the_page_calculates_what_python_calculates(browser, id):
    rows = inputs(id)
    told = browser.evaluate(
        "([id, rows]) => rows.map(row => bayleaf.run[id](row).map(x => isNaN(x) ? null : x))", [id, rows]
    )
    mine = [calculator(id).everything(row) for row in rows]
    theirs = [[math.nan if x is None else x for x in row] for row in told]
    assert max(difference(a, b) for one, other in zip(mine, theirs) for a, b in zip(one, other)) <= 1e-12


def test_the_page_turns_units_into_si_and_back_as_python_does(browser):
    dice = random.Random("units")
    asked = [
        (dice.choice([1, 10, 100, 1000]) * dice.uniform(-1, 1), symbol, reference)
        for symbol in used_units()
        for reference in ("absolute", "difference")
        for _ in range(20)
    ]
    to = browser.evaluate("asked => asked.map(a => bayleaf.to_si(...a))", asked)
    back = browser.evaluate("asked => asked.map(a => bayleaf.from_si(...a))", asked)
    offsets = {symbol: units()[symbol].offset for symbol in used_units()}
    for (value, symbol, reference), there, here in zip(asked, to, back):
        size = max(abs(there), offsets[symbol] if reference == "absolute" else 0.0)
        assert abs(to_si(value, symbol, reference) - there) <= 1e-15 * size
        assert from_si(value, symbol, reference) == here


def used_units() -> list[str]:
    parts = [part for id in IDS for part in (*calculator(id).inputs.values(), *calculator(id).results.values())]
    return sorted({symbol for part in parts for symbol in part.quantity.symbols()})


def test_the_page_rounds_as_python_rounds(browser):
    dice = random.Random("digits")
    asked = [
        (
            dice.choice((dice.uniform(-1000, 1000), dice.randint(-4000, 4000) / 8, 10.0 ** dice.randint(-6, 8))),
            dice.randint(1, 6),
        )
        for _ in range(5000)
    ]
    told = browser.evaluate("asked => asked.map(a => bayleaf.significant(...a))", asked)
    assert told == [significant(x, digits) for x, digits in asked]


def test_a_name_of_a_record_is_no_name_in_the_page(browser):
    assert browser.evaluate("Object.keys(bayleaf)") == ["to_si", "from_si", "significant", "run"]
    assert browser.evaluate("Object.keys(bayleaf.run)") == json.loads(json.dumps(IDS))
