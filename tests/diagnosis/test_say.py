"""A judgement can be read aloud."""

from __future__ import annotations

import json

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.data import to_json
from bayleaf.diagnosis.jobs.say import lines
from tests.diagnosis.sample import answer, book, job, value

MAKER = {"primed": {"min": 55, "max": 62, "unit": "psi", "looked_up": "service information"}}


def text(*readings: dict, the_book=None, **more: object) -> str:
    the_book = the_book or book()
    return "\n".join(lines(judge(the_book, job(*readings, **more)), the_book))


def test_a_reading_is_said_with_its_verdict_its_band_and_its_error():
    said = text(value("primed", 58.5), maker_bands=MAKER)
    assert "Primed pressure: 58.5 psi. In band." in said
    assert (
        "Judged against 55–62 psi (380–427 kPa), the maker's figure typed into the job: service information, with 2.5 psi allowed for error."
        in said
    )


def test_what_is_left_has_its_stages_its_share_and_its_mend():
    said = text(value("primed", 50), felt=["no-power"], maker_bands=MAKER)
    assert "What is left, if only one thing is wrong\n  Pump dead: 50 in 100.\n    Mended by: Renew the part." in said
    assert "Filter blocked (nearly): 25 in 100." in said
    assert "The shares follow how common each fault is, which is a judgement." in said
    assert "A cause outside this book is always possible." in said


def test_a_mend_that_is_no_procedure_is_said_in_words():
    assert "To mend it: Fit a new regulator." in text(answer("hose-look", "wet"))


def test_a_cause_that_belongs_to_somebody_else_is_said():
    said = text(answer("spark-seen", "weak"), value("primed", 58), felt=["no-power", "rough-idle"])
    assert "Weak spark.\n    It lies outside the systems of this book and belongs to somebody else." in said
    assert "somebody else" not in text(answer("hose-look", "wet"), felt=["long-crank"])


def test_what_cleared_a_fault_is_said():
    assert "Primed pressure (inside the usual spread): Pump dead." in text(value("primed", 58), felt=["no-power"])
    assert "The regulator's hose (dry): Vacuum hose off, Diaphragm leaks." in text(
        answer("hose-look", "dry"), felt=["rough-idle"]
    )


def test_when_nothing_fits_it_says_what_to_doubt_and_which_two_would_fit():
    said = text(answer("primed", "none"), value("ground-drop", 0.9, "V", "meter"), felt=["no-power"])
    assert (
        "No single fault in this book fits all the readings\n  Two things are wrong, or one of the readings is" in said
    )
    assert "No candidate shows these together: Primed pressure and Ground drop." in said
    assert "Doubt Ground drop, and these come back: Pump dead." in said
    assert "Pump dead with Pump ground poor" in said


def test_a_job_without_readings_is_said_too():
    assert "No readings yet." in text()
    assert "No complaint was given" in text()


def test_an_intermittent_says_why_a_reading_did_not_count():
    said = text(value("primed", 58, fault_was="absent"), comes_and_goes=True)
    assert "The fault was absent when this was read, so it clears nothing." in said


def test_it_says_of_which_cylinder_a_reading_was_taken():
    each = {**book().of("readings")["spark-seen"].data, "each": "cylinder"}
    said = text(
        answer("spark-seen", "weak", which=3),
        answer("spark-seen", "strong", which=4),
        the_book=book(readings={"spark-seen": each}),
    )
    assert "Spark seen, cylinder 3: weak.\n  Spark seen, cylinder 4: strong." in said


def test_it_says_of_which_connection_by_the_name_of_the_part():
    each = {**book().of("readings")["ground-drop"].data, "each": "connection"}
    said = text(value("ground-drop", 0.9, "V", "meter", which="ground"), the_book=book(readings={"ground-drop": each}))
    assert "Ground drop, connection Ground: 0.9 V. High." in said


def test_advice_that_several_readings_need_is_given_once():
    said = text(
        value("primed", 56),
        value("idle", 46),
        felt=["no-power"],
        maker_bands={**MAKER, "idle": {**MAKER["primed"], "min": 46}},
    )
    assert said.count("Too close to call.") == 2
    assert said.count("Zero and bleed the instrument") == 1
    assert said.count("Able to decide it: Fine sender.") == 1


def test_an_invented_job_says_so():
    assert "INVENTED" in text(invented=True)
    assert "INVENTED" not in text()


def test_the_text_is_plain_lines():
    said = text(
        value("primed", 56),
        answer("hose-look", "wet"),
        {"repaired": "hose-is-off"},
        felt=["no-power", "long-crank"],
        maker_bands=MAKER,
    )
    assert "\t" not in said
    assert "None" not in said and "frozenset" not in said


def test_the_data_form_holds_what_the_text_says():
    the_book = book()
    data = to_json(judge(the_book, job(value("primed", 58), answer("hose-look", "off"), felt=["rough-idle"])), the_book)
    assert json.loads(json.dumps(data)) == data
    assert data["left"] == ["spark-weak", "hose-is-off"]
    assert data["readings"][0]["answers"] == ["high", "low", "normal"]
    assert data["cleared"] == [{"fault": "diaphragm-leaks", "by": {"leaking": ["hose-look"]}}]
