"""Microseconds a cell of a calculator beside a plain Python loop of the same formula, and the same in Chromium.

`python tests/bench/bench_formulas.py` prints a table; nothing is asserted.
"""

from __future__ import annotations

import math
import random
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tools")]

from playwright.sync_api import sync_playwright

from bayleaf.formulas.output.javascript import script
from tests.browser.conftest import ARGUMENTS, executable
from tests.browser.test_calculators import IDS, difference, inputs
from tests.reference.outside import calculator

CELLS, REPEATS = 20_000, 5
IN_CHROMIUM = """id => { const rows = window.rows, f = bayleaf.run[id]; let best = Infinity;
  for (let k = 0; k < 5; k++) { const t = performance.now(); for (const row of rows) f(row); best = Math.min(best, performance.now() - t); }
  return best; }"""


# The same formulas as anyone would write them in a loop, in SI, without a thought for what may go wrong.
def rail(set_pressure, vacuum, boost):
    return -vacuum + boost + set_pressure


def flow(rated, rated_pressure, pressure):
    share = math.sqrt(pressure / rated_pressure)
    return share, rated * share


def compressor(inlet, boost, barometer, efficiency):
    ratio = (boost + barometer) / barometer
    return ratio, inlet * (1 + (ratio ** ((1.4 - 1) / 1.4) - 1) / efficiency)


def wire(number, length, current, temperature):
    diameter = 0.000127 * 92 ** ((36 - number) / 39)
    area = math.pi * diameter**2 / 4
    by_length = 1.7241e-8 / area * (1 + 0.00393 * (temperature - 293.15))
    return diameter, area, by_length, by_length * length, by_length * length * current


def air_ratio(co2, co, o2, hc, no, hydrogen, oxygen):
    carbon = co2 + co
    water = hydrogen / 4 * 3.5 / (3.5 + co / co2) - oxygen / 2
    had = co2 + co / 2 + o2 + no / 2 + water * carbon
    wanted = (1 + hydrogen / 4 - oxygen / 2) * (carbon + 6 * hc)
    return had / wanted


PLAIN = {
    "regulator-rail-pressure": rail,
    "injector-flow-at-pressure": flow,
    "compressor-outlet-temperature": compressor,
    "wire-drop": wire,
    "lambda-from-gases": air_ratio,
}


def rows_of(id: str) -> list[list[float]]:
    dice = random.Random(id)
    return [[dice.uniform(one.low, one.high) for one in calculator(id).inputs.values()] for _ in range(CELLS)]


def best(work) -> float:
    """Microseconds a cell, the best of several runs."""
    found = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        work()
        found.append(time.perf_counter() - start)
    return min(found) / CELLS * 1e6


def loop(function, rows):
    def work():
        for row in rows:
            function(*row)

    return work


def engine(run, rows):
    def work():
        for row in rows:
            run(row)

    return work


def main() -> None:
    arguments = [*ARGUMENTS, "--no-sandbox"]
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=executable(), args=arguments)
        page = browser.new_page()
        page.add_script_tag(content=script({id: calculator(id) for id in IDS}))
        print("| calculator | engine µs a cell | plain loop µs | ratio | Chromium µs |\n|---|---|---|---|---|")
        for id, function in PLAIN.items():
            rows = rows_of(id)
            mine, plain = best(engine(calculator(id).run, rows)), best(loop(function, rows))
            page.evaluate("rows => { window.rows = rows; }", rows)
            theirs = page.evaluate(IN_CHROMIUM, id) / CELLS * 1000
            print(f"| {id} | {mine:.2f} | {plain:.2f} | {mine / plain:.1f} | {theirs:.2f} |")
        values, differ, worst = equality(page)
        print(
            f"\n{len(IDS)} calculators, {values} values in Chromium and in Python: {differ} differ, the worst by {worst:.1e}"
        )
        browser.close()


def equality(page) -> tuple[int, int, float]:
    """How many values both sides calculated, how many differ in any bit, and the worst relative difference."""
    values = differ = 0
    worst = 0.0
    for id in IDS:
        rows = inputs(id)
        told = page.evaluate(
            "([id, rows]) => rows.map(row => bayleaf.run[id](row).map(x => isNaN(x) ? null : x))", [id, rows]
        )
        for row, theirs in zip(rows, told):
            for a, b in zip(calculator(id).run(row), theirs):
                off = difference(a, math.nan if b is None else b)
                values, differ, worst = values + 1, differ + (off > 0), max(worst, off)
    return values, differ, worst


if __name__ == "__main__":
    main()
