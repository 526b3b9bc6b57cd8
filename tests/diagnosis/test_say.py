"""A judgement can be read aloud."""

from __future__ import annotations

import json

from bayleaf.diagnosis.jobs.data import to_json
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.say import lines
from tests.diagnosis.sample import answer, book, job, value

MAKER = {"primed": {"min": 55, "max": 62, "unit": "psi", "looked_up": "service information"}}


def text(*readings: dict, the_book=None, why: bool = False, **more: object) -> str:
    the_book = the_book or book()
    return "\n".join(lines(judge(the_book, job(*readings, **more)), the_book, why))


def test_a_reading_is_one_line_with_its_verdict_and_the_rest_with_why():
    said = text(value("primed", 58.5), maker_bands=MAKER)
    assert "  Primed pressure: 58.5 psi, in band." in said.split("\n")
    band = "Judged against 55–62 psi (380–427 kPa), the maker's figure typed into the job: service information, with 2.5 psi allowed for error."
    assert band not in said
    assert band in text(value("primed", 58.5), maker_bands=MAKER, why=True)


def test_the_answer_comes_before_the_readings_and_the_whole_in_about_fifteen_lines():
    said = text(value("primed", 50), answer("hose-look", "dry"), felt=["no-power"], maker_bands=MAKER).split("\n")
    assert said.index("Fits every reading, likeliest first") < said.index("What was read")
    assert len(said) <= 20


def test_a_value_too_close_to_call_has_its_odds():
    # By hand: 56 psi ± 2.5 lies from 53.5 to 58.5, of which 55 to 58.5 is in band: 3.5 parts against 1.5, 2.3 to 1.
    assert "56 psi, too close to call, about 2 to 1 in band." in text(value("primed", 56), maker_bands=MAKER)


def test_what_is_left_has_its_stages_and_its_share():
    said = text(value("primed", 50), felt=["no-power"], maker_bands=MAKER)
    # The shares are worked out by hand in test_judge.
    assert "Fits every reading, likeliest first\n  Pump dead: " in said
    assert "  Filter blocked (nearly): " in said
    assert "A cause outside this book: " in said
    assert "Repair for all of them: Renew the part." in said


def test_repairs_are_said_only_below_five_left():
    assert "Repair" not in text()
    assert "Repair" in text(value("primed", 50), felt=["no-power"], maker_bands=MAKER)


def test_all_in_band_says_that_nothing_measured_is_out():
    fine = [value("primed", 58.5), answer("hose-look", "dry"), answer("spark-seen", "strong")]
    assert "Nothing that was measured is out." in text(*fine, maker_bands=MAKER)
    assert "Nothing that was measured is out." not in text(
        *fine, value("ground-drop", 0.9, "V", "meter"), maker_bands=MAKER
    )
    assert "Nothing that was measured is out." not in text(value("primed", 58.5))  # inside a spread is not in band


def test_what_fits_and_is_not_felt_so_is_one_line_with_a_count():
    said = text(felt=["no-power"])
    assert "  Fits, but is not felt like this or is rare: 2 faults." in said
    assert "Diaphragm leaks" not in said
    assert "Diaphragm leaks" in text(felt=["no-power"], why=True)


def test_of_what_fits_besides_that_which_can_hurt_someone_is_named():
    hazards = {"fire": {"title": "Fire"}}
    symptoms = {"long-crank": {"title": "Long crank", "dangers": ["fire"]}}
    said = text(felt=["no-power"], the_book=book(hazards=hazards, symptoms=symptoms))
    assert "is rare: 2 faults; Diaphragm leaks can burn or gas someone." in said


def test_a_repair_that_is_no_procedure_is_said_in_words_without_marks():
    leaks = {**book().of("faults")["diaphragm-leaks"].data, "mended_by": [{"words": "Fit a new [[regulator]]."}]}
    the_book = book(faults={"diaphragm-leaks": leaks})
    said = text(answer("hose-look", "wet"), felt=["long-crank"], the_book=the_book)
    assert "Repair: Fit a new regulator." in said.replace("Regulator", "regulator")
    assert "[[" not in said


def test_a_cause_that_belongs_to_another_trade_is_said():
    said = text(answer("spark-seen", "weak"), value("primed", 58), felt=["no-power", "rough-idle"])
    assert "  Weak spark: " in said
    assert "It belongs to another trade or system than this book covers." in said
    assert "another trade" not in text(answer("hose-look", "wet"), felt=["long-crank"])


def test_what_contradicts_a_fault_is_said_with_why():
    assert "Contradicted" not in text(answer("hose-look", "dry"), felt=["rough-idle"])
    said = text(answer("hose-look", "dry"), felt=["rough-idle"], why=True)
    assert "Contradicted, unless the reading misled" in said
    # By hand: of three answers *dry* has .03 / 3 = .01 with a fault that says another, and 1/3 with one that says nothing.
    assert "The regulator's hose (dry): Vacuum hose off (×0.03), Diaphragm leaks (×0.03)." in said


def test_when_nothing_fits_it_says_which_two_would_fit_and_what_contradicts():
    readings = (answer("primed", "none"), value("ground-drop", 0.9, "V", "meter"))
    said = text(*readings, felt=["no-power"])
    assert "No single fault in this book fits every reading\n  Two things are wrong, or one reading is" in said
    assert "Two faults at once that would fit: Pump dead with Pump ground poor." in said
    assert "No fault shows these together: Primed pressure and Ground drop." in said


def test_the_quickest_reading_to_repeat_is_named():
    steps = [{"say": "Read it.", "takes": {"reading": "ground-drop", "instrument": "meter"}}]
    takes = {"take-drop": {"title": "Take the drop", "minutes": {"hands": 4}, "systems": ["port"], "steps": steps}}
    readings = (answer("primed", "none"), value("ground-drop", 0.9, "V", "meter"))
    said = text(*readings, felt=["no-power"], the_book=book(procedures=takes))
    assert "Quickest to read again: Ground drop (4 minutes). If it is doubted, these come back: Pump dead." in said


def test_a_job_without_readings_is_said_too():
    assert "Nothing was read that says anything yet." in text()
    assert "Complaint" not in text()


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
    assert "Ground drop, connection Ground: 0.9 V, high." in said


def test_advice_that_several_readings_need_is_given_once():
    said = text(
        value("primed", 56),
        value("idle", 46),
        felt=["no-power"],
        maker_bands={**MAKER, "idle": {**MAKER["primed"], "min": 46}},
    )
    assert said.count("too close to call") == 2
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
    judgement = judge(the_book, job(value("primed", 58), answer("hose-look", "off"), felt=["rough-idle"]))
    data = to_json(judgement, the_book)
    assert json.loads(json.dumps(data)) == data
    assert data["left"] == ["hose-is-off", "spark-weak"]
    assert data["readings"][0]["answers"] == ["high", "low", "normal"]
    by = {item["fault"]: item["by"] for item in data["contradicted"]}
    assert by == {
        "filter-blocked": {"partly": ["hose-look"], "nearly": ["hose-look"]},
        "diaphragm-leaks": {"leaking": ["hose-look"]},
        "pump-dead": {"dead": ["primed"]},
    }
    shares = [item["share"] for item in (*data["faults"], *data["besides"])]
    assert (
        0 < 1 - sum(shares) - data["outside"] < 0.2
    )  # the rest is what a misleading reading leaves to the contradicted
