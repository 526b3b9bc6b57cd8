"""Entries that cannot be judged are found where they stand."""

from __future__ import annotations

from bayleaf.diagnosis import job_problems
from tests.diagnosis.sample import CAR, answer, book, job, value


def one(*readings: dict, **more: object) -> tuple:
    (found,) = job_problems(book(), job(*readings, **more))
    return found.code, found.path


def test_a_sound_job_has_no_problems():
    sound = (value("primed", 58.5), answer("hose-look", "wet"), answer("idle", "unsteady"), {"reading": "ground-drop", "cannot": "no meter"})
    assert job_problems(book(), job(*sound, {"repaired": "hose-is-off"}, felt=["no-power"])) == []


def test_a_verdict_is_not_an_answer():
    assert one(answer("primed", "low")) == ("JOB-1", ("readings", 0, "answer"))


def test_a_question_takes_no_number_and_its_answers_are_offered():
    (found,) = job_problems(book(), job(value("hose-look", 3)))
    assert (found.code, found.path, found.help) == ("JOB-2", ("readings", 0, "value"), "Write answer: dry or wet or off.")


def test_a_computed_reading_is_never_typed():
    (found,) = job_problems(book(), job(value("idle", 36), value("hose-rise", 8)))
    assert (found.code, found.path, found.help) == ("JOB-3", ("readings", 1, "reading"), "Give hose-off and idle.")


def test_a_reading_that_the_car_does_not_have():
    assert one(value("primed", 58), car={**CAR, "has": "none"}) == ("JOB-4", ("readings", 0, "reading"))


def test_an_intermittent_says_at_each_reading_whether_it_was_there():
    assert one(value("primed", 58), comes_and_goes=True) == ("JOB-5", ("readings", 0))
    assert job_problems(book(), job(value("primed", 58, fault_was="absent"), comes_and_goes=True)) == []


def test_only_what_a_reading_depends_on_can_be_unmet():
    assert one(value("idle", 36, not_met=["tank-quarter-full"])) == ("JOB-6", ("readings", 0, "not_met", 0))
    assert job_problems(book(), job(value("primed", 36, not_met=["tank-quarter-full"]))) == []


def test_a_name_that_is_not_in_the_book_is_the_links_to_report():
    assert job_problems(book(), job(value("primd", 58), {"repaired": "filter"}, car={**CAR, "systems": ["prt"]})) == []
