"""Two jobs of the demonstration against what can be worked by hand: an expectation, and two faults at once.

Factors of NIST SP 811, Appendix B.8: 1 inHg (32 °F) is 3.386389 kPa, 1 psi is 6.894757 kPa.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.embed import embedded
from bayleaf.records import OUTSIDE, Book, load

ROOT = Path(__file__).resolve().parents[2]
PSI, INHG = 6894.757, 3386.389


@cache
def the_book() -> Book:
    return load(ROOT)


def judged(job: str) -> Judgement:
    return judge(the_book(), the_book().of("jobs")[job])


def test_the_rise_is_judged_by_the_vacuum_that_was_measured():
    # 18.5 inHg is 18.5 x 3.386389 / 6.894757 = 9.086 psi; within 1.5 psi either way: 7.586 to 10.586 psi.
    rise = next(t for t in judged("saloon-5-thirsty").taken if t.reading == "rail-pressure-rise")
    band = rise.verdict.band
    assert (band.source, rise.verdict.kind) == ("expected", "low")
    assert band.low / PSI == pytest.approx(18.5 * INHG / PSI - 1.5, rel=1e-6) == pytest.approx(7.586, abs=5e-4)
    assert band.high / PSI == pytest.approx(10.586, abs=5e-4)
    assert "from Manifold vacuum at idle" in rise.verdict.words
    # The vacuum gauge may be out by 0.9 + 0.5 / 2 = 1.15 inHg, which is 0.565 psi of the rise.
    assert band.slack / PSI == pytest.approx(1.15 * INHG / PSI, rel=1e-6) == pytest.approx(0.565, abs=5e-4)


def test_without_the_vacuum_the_rise_is_not_judged_and_it_says_what_to_take():
    book = load(ROOT)
    job = book.of("jobs")["saloon-5-thirsty"]
    job.data["readings"] = [e for e in job.data["readings"] if e.get("reading") != "manifold-vacuum-idle"]
    rise = next(t for t in judge(book, job).taken if t.reading == "rail-pressure-rise")
    assert (rise.verdict.kind, rise.counts) == ("no band", False)
    assert "Take this reading first: Manifold vacuum at idle." in rise.verdict.what_to_do


def test_a_procedure_that_takes_a_reading_with_an_expectation_shows_its_table():
    view = Uses(the_book())
    record = the_book().of("procedures")["measure-regulator-response"]
    page = embedded(view, record, record.data["results"], record.data["systems"])
    assert "regulator-rise" in page and "8.84" in page  # the rise at 18 inHg


def test_a_wet_hose_and_a_poor_ground_are_two_faults_and_the_pair_is_named():
    judgement = judged("saloon-5-smoke-then-stalls")
    assert judgement.left_ids == (OUTSIDE,)
    assert set(judgement.pairs[0].faults) == {"regulator-diaphragm-leaking", "pump-ground-resistance"}
    brings = {d.of: d.brings for d in judgement.doubts}
    assert "pump-ground-resistance" in brings["fuel-in-regulator-hose"]
    assert brings["pump-ground-drop"] == ("regulator-diaphragm-leaking",)
