"""A draft of a reading lists what is reached and silent, with what the fault says of the nearest reading. Worked by hand."""

from __future__ import annotations

from bayleaf.diagnosis.faults.draft import drafts
from tests.diagnosis.sample import asked, book, measured

CRUISE = measured("Pressure at cruise", "rail-pressure", at="rail", observes=["pressure"])
IDLE = measured("Idle pressure", "rail-pressure", at="rail", observes=["pressure"])
FLOW = measured("Flow", "rail-pressure", at="rail", observes=["flow"])


def drafted(**readings: dict) -> dict[tuple[str, str], tuple[str, tuple[str, ...]]]:
    the_book = book(readings={"cruise": CRUISE, "idle": IDLE, **readings})
    return {(d.fault.id, d.stage): (d.like, d.answers) for d in drafts(the_book, "cruise")}


def test_a_stage_that_is_reached_and_silent_is_drafted_as_the_nearest_reading():
    assert drafted() == {("filter-blocked", "partly"): ("idle", ("normal",))}  # the second stage is like the first


def test_a_reading_with_other_answers_is_no_guide():
    question = asked("Idle pressure", ["good", "bad"], "good", at="rail", observes=["pressure"])
    assert drafted(idle=question)["filter-blocked", "partly"] == ("", ())


def test_the_way_says_why_it_is_reached():
    the_book = book(readings={"cruise": CRUISE})
    assert [d.way for d in drafts(the_book, "cruise")] == [("flow", "pressure")]
