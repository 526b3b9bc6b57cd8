"""When no single fault fits, the judgement says what to doubt and which two would fit."""

from __future__ import annotations

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
        "primed": {"ground-poor", "spark-weak"},
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
    assert (judgement.left_ids, judgement.explains) == ((OUTSIDE,), "any")
    assert judgement.pairs[0].faults == ("diaphragm-leaks", "ground-poor")


def test_a_pair_reads_normal_only_where_both_allow_it():
    readings = (answer("primed", "none"), GROUND_HIGH, answer("hose-look", "dry"))
    judgement = judge(book(faults=exact()), job(*readings, felt=["no-power"]))
    assert [pair.faults for pair in judgement.pairs] == [("pump-dead", "ground-poor")]
    wet = judge(book(faults=exact()), job(*readings[:2], answer("hose-look", "off"), felt=["no-power"]))
    assert [pair.faults for pair in wet.pairs] == [
        ("pump-dead", "ground-poor")
    ]  # the dead pump is silent about the hose


def test_a_pair_must_explain_the_whole_complaint():
    judgement = judge(book(faults=exact()), job(GROUND_HIGH, felt=["no-power", "long-crank"]))
    assert judgement.explains == "any"
    assert {pair.faults for pair in judgement.pairs} == {("diaphragm-leaks", "ground-poor")}


def test_what_a_mended_fault_explained_needs_no_second_one():
    mended = ({"repaired": "diaphragm-leaks"}, GROUND_HIGH)
    judgement = judge(book(faults=exact()), job(*mended, felt=["no-power", "long-crank"]))
    assert (judgement.explains, judgement.left_ids, judgement.pairs) == ("any", ("ground-poor",), ())


def test_a_repair_may_be_doubted_too():
    judgement = judge(
        book(),
        job(
            GROUND_HIGH,
            {"repaired": "ground-poor"},
            value("ground-drop", 0.9, "V", "meter"),
            felt=["no-power"],
        ),
    )
    assert "spark-weak" in judgement.left_ids  # silent about the ground
    spark = answer("spark-seen", "strong")
    judgement = judge(
        book(),
        job(
            GROUND_HIGH, {"repaired": "ground-poor"}, value("ground-drop", 0.9, "V", "meter"), spark, felt=["no-power"]
        ),
    )
    assert judgement.left_ids == (OUTSIDE,)
    assert any(d.repair and d.of == "ground-poor" for d in judgement.doubts)
