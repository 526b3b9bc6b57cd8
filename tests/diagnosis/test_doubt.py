"""When no single fault fits, the judgement says what to doubt and which two would fit."""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.records import OUTSIDE
from tests.diagnosis.sample import answer, book, job, value

GROUND_HIGH = value("ground-drop", 0.9, "V", "meter")


def test_readings_that_no_fault_shows_together_contradict_each_other():
    judgement = judge(book(), job(answer("primed", "none"), GROUND_HIGH, felt=["no-power"]))
    assert judgement.left_ids == (OUTSIDE,)
    assert judgement.contradictions == (("primed", "ground-drop"),)


def test_the_reading_that_if_doubted_brings_a_fault_back_is_named():
    judgement = judge(book(), job(answer("primed", "none"), GROUND_HIGH, felt=["no-power"]))
    assert {d.of: set(d.brings) for d in judgement.doubts} == {
        "primed": {"ground-poor", "spark-weak", "diaphragm-leaks"},
        "ground-drop": {"pump-dead"},
    }


def test_a_reading_that_no_candidate_shows_stands_alone():
    judgement = judge(book(), job(value("primed", 80), felt=["no-power"]))
    assert judgement.contradictions == (("primed",),)


def exact() -> dict:
    """The sample's faults, with the ground sparing the hose and the diaphragm sparing the ground, by the graph."""
    faults = book().of("faults")
    return {
        "ground-poor": {**faults["ground-poor"].data, "disturbs": ["ground-loss"]},
        "diaphragm-leaks": {**faults["diaphragm-leaks"].data, "disturbs": ["pressure"]},
        "spark-weak": None,
    }


def test_two_faults_that_together_show_everything_are_found():
    readings = (answer("hose-look", "wet"), GROUND_HIGH, value("primed", 58))
    judgement = judge(book(faults=exact()), job(*readings, felt=["no-power", "long-crank"]))
    assert judgement.left_ids == (OUTSIDE,)
    assert judgement.pairs[0].faults == ("diaphragm-leaks", "ground-poor")


def test_a_pair_reads_normal_only_where_both_allow_it():
    readings = (answer("primed", "none"), GROUND_HIGH, answer("hose-look", "dry"))
    judgement = judge(book(faults=exact()), job(*readings, felt=["no-power"]))
    assert [pair.faults for pair in judgement.pairs] == [("pump-dead", "ground-poor")]
    wet = judge(book(faults=exact()), job(*readings[:2], answer("hose-look", "off"), felt=["no-power"]))
    assert [pair.faults for pair in wet.pairs] == [
        ("pump-dead", "ground-poor")
    ]  # the dead pump is silent about the hose


def test_of_pairs_the_one_that_is_felt_as_the_complaint_comes_first():
    readings = (answer("hose-look", "wet"), GROUND_HIGH, value("primed", 58))
    whole = judge(book(faults=exact()), job(*readings, felt=["no-power", "long-crank"])).pairs
    other = judge(book(faults=exact()), job(*readings, felt=["rough-idle"])).pairs
    assert {pair.faults for pair in whole} == {pair.faults for pair in other}
    # By hand: no power is sometimes the ground, long crank always the diaphragm; rough idle sometimes the diaphragm, its
    # long crank was not felt.
    first = {pair.faults: pair.weight for pair in whole}[("diaphragm-leaks", "ground-poor")]
    second = {pair.faults: pair.weight for pair in other}[("diaphragm-leaks", "ground-poor")]
    assert first / second == pytest.approx((0.35 * 0.9) / (0.35 * 0.3))


def test_where_one_fault_fits_no_pair_is_looked_for():
    mended = ({"repaired": "diaphragm-leaks"}, GROUND_HIGH)
    judgement = judge(book(faults=exact()), job(*mended, felt=["no-power", "long-crank"]))
    assert (judgement.left_ids, judgement.pairs, judgement.doubts) == (("ground-poor",), (), ())


def test_a_repair_may_be_doubted_too():
    twice = (GROUND_HIGH, {"repaired": "ground-poor"}, GROUND_HIGH)
    judgement = judge(
        book(), job(*twice, answer("spark-seen", "strong"), answer("hose-look", "dry"), felt=["no-power"])
    )
    assert judgement.left_ids == (OUTSIDE,)
    assert any(d.repair and d.of == "ground-poor" for d in judgement.doubts)
