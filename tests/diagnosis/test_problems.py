"""A job's slips are found where they stand, and a replay is held against what the job expects."""

from __future__ import annotations

import pytest

from bayleaf.diagnosis import CODES, job_problems, replay
from tests.diagnosis.sample import CAR, answer, book, job, value

MAKER = {"min": 55, "max": 62, "unit": "psi", "looked_up": "service information"}


def problems(*readings: dict, **more: object) -> list[tuple]:
    return [(f.code, f.path, f.message) for f in job_problems(book(), job(*readings, **more))]


def one(*readings: dict, **more: object) -> tuple:
    (found,) = problems(*readings, **more)
    return found


def test_a_sound_job_has_no_problems():
    sound = (value("primed", 58.5), answer("hose-look", "wet"), answer("idle", "unsteady"), {"reading": "ground-drop", "cannot": "no meter"})
    assert problems(*sound, {"repaired": "hose-is-off"}, felt=["no-power"], maker_bands={"primed": MAKER}, shop=["gauge-0-100"]) == []


@pytest.mark.parametrize(
    ("entry", "path", "message"),
    [
        (value("primd", 58), ("readings", 0, "reading"), "there is no reading primd"),
        (value("primed", 58, instrument="gauge-100"), ("readings", 0, "instrument"), "there is no equipment gauge-100"),
        ({"repaired": "filter"}, ("readings", 0, "repaired"), "filter is a component, not a fault"),
    ],
)
def test_a_name_that_leads_nowhere(entry, path, message):
    assert one(entry) == ("JOB-1", path, message)


def test_the_nearest_name_is_offered():
    (finding,) = job_problems(book(), job(value("primd", 58)))
    assert finding.help == "Did you mean primed?"


@pytest.mark.parametrize(
    ("more", "path"),
    [
        ({"felt": ["no-powr"]}, ("felt", 0)),
        ({"shop": ["spanner"]}, ("shop", 0)),
        ({"maker_bands": {"prime": MAKER}}, ("maker_bands", "prime")),
        ({"car": {**CAR, "has": ["turbo"]}}, ("car", "has", 0)),
    ],
)
def test_names_outside_the_readings(more, path):
    assert one(**more)[:2] == ("JOB-1", path)


def test_a_unit_of_something_else():
    assert one(value("primed", 4, "V"))[:2] == ("JOB-2", ("readings", 0, "unit"))
    assert one(maker_bands={"primed": {**MAKER, "unit": "V"}})[:2] == ("JOB-2", ("maker_bands", "primed", "unit"))


def test_an_answer_that_the_reading_does_not_have():
    assert one(answer("hose-look", "soaked"))[:2] == ("JOB-3", ("readings", 0, "answer"))
    assert one(answer("primed", "low"))[:2] == ("JOB-3", ("readings", 0, "answer"))
    assert one(value("hose-look", 3))[:2] == ("JOB-3", ("readings", 0, "value"))


def test_a_computed_reading_is_never_typed():
    assert one(value("hose-rise", 8))[:2] == ("JOB-4", ("readings", 0, "reading"))


def test_a_reading_that_the_car_does_not_have():
    assert one(value("primed", 58), car={**CAR, "has": "none"})[:2] == ("JOB-5", ("readings", 0, "reading"))


def test_an_instrument_that_does_not_measure_this():
    assert one(value("primed", 58, instrument="meter"))[:2] == ("JOB-6", ("readings", 0, "instrument"))


def test_an_implausible_value_is_a_warning_and_a_verdict():
    assert one(value("primed", 585))[:2] == ("JOB-7", ("readings", 0, "value"))
    assert CODES["JOB-7"].level == "warning"


def test_an_intermittent_says_at_each_reading_whether_it_was_there():
    assert one(value("primed", 58), comes_and_goes=True)[:2] == ("JOB-8", ("readings", 0))
    assert problems(value("primed", 58, fault_was="absent"), comes_and_goes=True) == []


def test_only_what_a_reading_depends_on_can_be_unmet():
    assert one(value("idle", 36, not_met=["tank-quarter-full"]))[:2] == ("JOB-9", ("readings", 0, "not_met", 0))
    assert problems(value("primed", 36, not_met=["tank-quarter-full"])) == []


def test_a_makers_figure_that_cannot_be():
    assert one(maker_bands={"primed": {**MAKER, "min": 63}})[:2] == ("JOB-10", ("maker_bands", "primed", "min"))
    assert one(maker_bands={"hose-look": MAKER})[:2] == ("JOB-10", ("maker_bands", "hose-look"))


def test_two_systems_of_one_family():
    assert one(car={**CAR, "systems": ["port", "feed"]})[:2] == ("JOB-12", ("car", "systems", 1))


def replayed(*readings: dict, expects: object, **more: object) -> list[str]:
    with_jobs = book(jobs={"a-job": job(*readings, expects={"left": expects}, **more).data})
    return [f.message for f in replay(with_jobs)]


def test_a_replay_that_leaves_what_is_expected_says_nothing():
    assert replayed(answer("primed", "none"), expects=["pump-dead"], felt=["no-power"]) == []
    assert replayed(value("primed", 80), expects=["outside-this-book"], felt=["no-power"]) == []
    assert replayed(value("primed", 80), expects="none", felt=["no-power"]) == []


def test_a_replay_says_what_was_cleared_and_by_what_and_what_is_left():
    (message,) = replayed(answer("primed", "none"), expects=["ground-poor", "hose-is-off"], felt=["no-power"])
    assert "ground-poor was cleared by primed; hose-is-off was never a candidate; pump-dead is left" in message


def test_a_job_with_errors_is_not_replayed():
    assert replayed(value("primd", 58), expects=["pump-dead"]) == []
