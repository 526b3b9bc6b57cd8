"""A job's readings clear what they exclude, and the judgement says by which reading."""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.records import OUTSIDE
from tests.diagnosis.sample import answer, book, job, value

MAKER = {"primed": {"min": 53.5, "max": 60.5, "unit": "psi", "looked_up": "The maker's service information"}}


def left(*readings: dict, the_book=None, **more: object) -> set[str]:
    return set(judge(the_book or book(), job(*readings, **more)).left_ids)


def fits(*readings: dict, the_book=None, **more: object) -> set[str]:
    """Everything that no reading contradicts, however little belief it has."""
    judgement = judge(the_book or book(), job(*readings, **more))
    return {item.fault for item in (*judgement.left, *judgement.besides)}


def kinds(*readings: dict, **more: object) -> list[str]:
    return [t.verdict.kind for t in judge(book(), job(*readings, **more)).taken]


EVERY = {"filter-blocked", "hose-is-off", "diaphragm-leaks", "pump-dead", "ground-poor", "spark-weak"}


def test_without_readings_every_fault_of_the_car_fits():
    assert fits() == EVERY


def test_a_complaint_weighs_and_never_clears():
    judgement = judge(book(), job(felt=["no-power"]))
    assert set(judgement.left_ids) == {"filter-blocked", "pump-dead", "ground-poor", "spark-weak"}
    assert fits(felt=["no-power"]) == EVERY
    assert judgement.contradicted == ()


def test_of_several_complaints_the_fault_that_explains_all_comes_first_and_the_rest_still_fit():
    judgement = judge(book(), job(felt=["no-power", "rough-idle"]))
    assert judgement.left_ids[0] == "spark-weak"
    assert fits(felt=["no-power", "rough-idle"]) == EVERY


def test_one_symptom_too_many_drops_no_fault():
    readings = (answer("primed", "none"),)
    assert left(*readings, felt=["no-power"]) == {"pump-dead"}
    assert left(*readings, felt=["no-power", "long-crank", "rough-idle"]) == {"pump-dead"}


def test_an_unexplained_complaint_leaves_all_faults_and_more_belief_outside_this_book():
    whine = book(symptoms={"whine": {"title": "Whine"}})
    judgement = judge(whine, job(felt=["whine"]))
    assert {item.fault for item in (*judgement.left, *judgement.besides)} == EVERY
    # By hand: .08 × .35 outside against .92 × .03 × .3 inside, and .3² for the two faults with two symptoms or always one.
    assert judgement.outside > judge(whine, job()).outside == pytest.approx(0.08)


def test_a_value_inside_the_spread_clears_only_none_and_unsteady():
    assert left(value("primed", 58.5), felt=["no-power"]) == {"filter-blocked", "ground-poor", "spark-weak"}


def test_the_makers_figure_typed_into_the_job_can_say_low():
    judgement = judge(book(), job(value("primed", 50), felt=["no-power"], maker_bands=MAKER))
    assert set(judgement.left_ids) == {"filter-blocked", "ground-poor", "pump-dead"}
    assert {item.fault: item.stages for item in judgement.left}["filter-blocked"] == ("nearly",)


def test_too_close_keeps_both_neighbours():
    assert left(value("primed", 54.5), felt=["no-power"], maker_bands=MAKER) == {
        "filter-blocked",
        "ground-poor",
        "spark-weak",
        "pump-dead",
    }


def test_what_contradicts_a_fault_is_said_by_stage():
    judgement = judge(book(), job(value("primed", 80), answer("hose-look", "dry"), felt=["no-power"]))
    assert next(c.by for c in judgement.contradicted if c.fault == "filter-blocked") == {
        "partly": ("primed",),
        "nearly": ("primed",),
    }


def test_a_fault_can_go_by_one_reading_a_stage():
    judgement = judge(
        book(), job(value("primed", 50), value("ground-drop", 0.9, "V", "meter"), felt=["no-power"], maker_bands=MAKER)
    )
    assert next(c.by for c in judgement.contradicted if c.fault == "filter-blocked") == {
        "partly": ("primed", "ground-drop"),
        "nearly": ("ground-drop",),
    }
    assert judgement.left_ids == ("ground-poor",)


def test_the_same_reading_twice_with_nothing_mended_between_is_unsteady_or_misread_and_counts_for_nothing():
    judgement = judge(book(), job(value("primed", 80), value("primed", 58), felt=["no-power"]))
    assert [t.counts for t in judgement.taken] == [False, False]
    assert all("unsteady, or misread" in t.aside for t in judgement.taken)
    assert fits(value("primed", 80), value("primed", 58)) == EVERY


def test_a_reading_repeated_within_what_the_instrument_may_be_out_by_replaces_the_earlier_one():
    # 2 % of 100 psi and half a division make 2.5 psi each way: 4.9 psi apart may be one pressure, 5.1 may not.
    within = judge(book(), job(value("primed", 58), value("primed", 62.9)))
    assert [t.counts for t in within.taken] == [False, True]
    beyond = judge(book(), job(value("primed", 58), value("primed", 63.1)))
    assert [t.counts for t in beyond.taken] == [False, False]


def test_after_a_repair_a_reading_may_differ():
    judgement = judge(book(), job(value("primed", 80), {"repaired": "hose-is-off"}, value("primed", 58)))
    assert [t.counts for t in judgement.taken] == [False, True]


def test_what_cannot_be_taken_clears_nothing():
    judgement = judge(
        book(),
        job({"reading": "primed", "cannot": "no port"}, {"reading": "idle", "not_reached": True}, felt=["no-power"]),
    )
    assert set(judgement.left_ids) == left(felt=["no-power"])
    assert judgement.cannot == (("primed", "no port"),)


def test_a_condition_not_met_clears_nothing():
    entry = value("primed", 80, not_met=["tank-quarter-full"])
    assert left(entry, felt=["no-power"]) == left(felt=["no-power"])
    assert kinds(entry) == ["not valid"]


def test_an_implausible_value_clears_nothing():
    assert left(value("idle", 500, instrument="gauge"), felt=["no-power"]) == left(felt=["no-power"])


def test_an_intermittent_that_was_absent_clears_nothing():
    absent = value("primed", 80, fault_was="absent")
    assert left(absent, felt=["no-power"], comes_and_goes=True) == left(felt=["no-power"])
    present = value("primed", 80, fault_was="present")
    assert left(present, felt=["no-power"], comes_and_goes=True) == {OUTSIDE}


def test_a_reading_that_says_nothing_replaces_none_that_did():
    present, absent = value("primed", 80, fault_was="present"), value("primed", 58, fault_was="absent")
    assert left(present, absent, felt=["no-power"], comes_and_goes=True) == {OUTSIDE}
    assert left(value("primed", 80), value("primed", 58, not_met=["tank-quarter-full"]), felt=["no-power"]) == {OUTSIDE}


def test_none_is_said_by_the_person_and_not_read():
    assert left(answer("primed", "none"), felt=["no-power"]) == {"pump-dead"}
    assert kinds(value("primed", 0)) == ["low"]


def test_unsteady_clears_what_is_steady():
    assert left(answer("primed", "unsteady")) == {OUTSIDE}


def test_a_difference_is_computed_when_both_its_readings_are_there():
    judgement = judge(book(), job(value("idle", 36), value("hose-off", 44)))
    rise = judgement.taken[-1]
    assert (rise.reading, rise.computed, rise.said, rise.verdict.kind) == ("hose-rise", True, "8.0 psi", "in band")
    assert rise.places == (0, 1)
    assert "hose-is-off" not in judgement.left_ids


def test_a_computed_reading_waits_for_both():
    assert [t.reading for t in judge(book(), job(value("idle", 36))).taken] == ["idle"]


def test_a_value_read_while_the_fault_was_absent_is_not_computed_with():
    judgement = judge(
        book(),
        job(value("idle", 36, fault_was="absent"), value("hose-off", 44, fault_was="present"), comes_and_goes=True),
    )
    assert "hose-rise" not in [t.reading for t in judgement.taken]


def test_shares_follow_commonness_stages_either_answers_and_the_complaint():
    """By hand, from the constants of the book: 50 psi is low for this car, and *no power* is the whole complaint."""
    judgement = judge(book(), job(value("primed", 50), felt=["no-power"], maker_bands=MAKER))
    low, half, wrong = 0.97 + 0.01, 0.97 / 2 + 0.01, 0.01  # 3 in 100 mislead, a third of them to each answer
    weighed = {
        "nearly": 9 / 2 * 0.9 * low * 3,
        "partly": 9 / 2 * 0.9 * wrong * 3,
        "hose-is-off": 3 * 0.03 * 0.3 * wrong * 3,
        "diaphragm-leaks": 1 * 0.03 * 0.3 * wrong * 3,
        "pump-dead": 9 * 0.9 * low * 3,  # none reads low
        "ground-poor": 9 * 0.35 * half * 3,
        "spark-weak": 9 * 0.9 * 0.3 * wrong * 3,
    }
    priors, inside = 9 + 3 + 1 + 9 + 9 + 9, 0.92
    total = inside / priors * sum(weighed.values()) + 0.08 * 0.35
    shares = {item.fault: item.share for item in judgement.left}
    assert shares == pytest.approx(
        {
            "pump-dead": inside / priors * weighed["pump-dead"] / total,
            "filter-blocked": inside / priors * weighed["nearly"] / total,
            "ground-poor": inside / priors * weighed["ground-poor"] / total,
        }
    )
    assert judgement.outside == pytest.approx(0.08 * 0.35 / total)


def test_a_repaired_fault_is_no_candidate_and_makes_its_own_readings_old():
    readings = (value("ground-drop", 0.9, "V", "meter"), {"repaired": "ground-poor"})
    judgement = judge(book(), job(*readings, felt=["no-power"]))
    assert set(judgement.left_ids) == {"filter-blocked", "pump-dead", "spark-weak"}
    assert "before the repair" in judgement.taken[0].aside


def test_a_normal_reading_from_before_a_repair_still_clears():
    readings = (value("ground-drop", 0.1, "V", "meter"), {"repaired": "filter-blocked"})
    assert left(*readings, felt=["no-power"]) == {"pump-dead", "spark-weak"}


def test_a_reading_that_the_repair_cannot_have_changed_still_clears():
    readings = (value("primed", 80), {"repaired": "hose-is-off"})
    assert left(*readings, felt=["no-power"]) == {OUTSIDE}


def test_a_reading_computed_across_a_repair_is_set_aside():
    judgement = judge(book(), job(value("idle", 36), {"repaired": "hose-is-off"}, value("hose-off", 44)))
    assert "before and after the repair" in judgement.taken[-1].aside


def test_a_reading_repeated_after_the_repair_counts():
    readings = (
        value("ground-drop", 0.9, "V", "meter"),
        {"repaired": "ground-poor"},
        value("ground-drop", 0.1, "V", "meter"),
        answer("primed", "none"),
    )
    assert left(*readings, felt=["no-power"]) == {"pump-dead"}


def test_what_is_mended_in_words_belongs_to_somebody_else():
    judgement = judge(book(), job(answer("hose-look", "wet")))
    item = next(item for item in judgement.left if item.fault == "diaphragm-leaks")
    assert (item.mends, item.words) == ((), ("Fit a new regulator.",))


def test_one_mend_for_all_that_is_left_is_named():
    assert judge(book(), job(felt=["no-power"])).one_mend == "renew-it"
    assert judge(book(), job(felt=["long-crank"])).one_mend == ""


def test_a_reading_of_each_cylinder_is_ruled_by_the_one_that_is_out():
    each = {**book().of("readings")["idle"].data, "each": "cylinder"}
    the_book = book(readings={"idle": each})
    band = {"idle": {"min": 30, "max": 40, "unit": "psi", "looked_up": "…"}}
    assert "hose-is-off" in left(value("idle", 60), value("idle", 35), the_book=the_book, maker_bands=band)
    assert "hose-is-off" not in left(value("idle", 35), value("idle", 36), the_book=the_book, maker_bands=band)


def test_a_repeated_reading_of_one_cylinder_touches_no_other():
    each = {**book().of("readings")["idle"].data, "each": "cylinder"}
    the_book = book(readings={"idle": each}, components={"hose": {"title": "Hose", "each": "cylinder"}})
    band = {"idle": {"min": 30, "max": 40, "unit": "psi", "looked_up": "…"}}
    third, again, second = (value("idle", number, which=which) for number, which in ((60, 3), (35, 3), (36, 2)))
    assert "hose-is-off" in fits(third, second, the_book=the_book, maker_bands=band)
    taken = judge(the_book, job(third, second, again, maker_bands=band)).taken
    assert [(t.which, t.counts) for t in taken] == [(3, False), (2, True), (3, False)]
    assert "hose-is-off" not in fits(
        third, second, again, the_book=the_book, maker_bands=band
    )  # the second still clears


def test_a_part_that_serves_both_banks_cannot_explain_one():
    each = {**book().of("readings")["idle"].data, "each": "bank"}
    bank = {"title": "Bank regulator", "each": "bank"}
    alike = {**book().of("faults")["hose-is-off"].data, "part": "bank-regulator"}
    the_book = book(
        readings={"idle": each},
        components={"bank-regulator": bank},
        faults={"of-one-bank": {**alike, "systems": ["port"]}},
    )
    band = {"idle": {"min": 30, "max": 40, "unit": "psi", "looked_up": "…"}}
    one_out = fits(value("idle", 60, which=1), value("idle", 35, which=2), the_book=the_book, maker_bands=band)
    assert "of-one-bank" in one_out and "hose-is-off" not in one_out
    both_out = fits(value("idle", 60, which=1), value("idle", 61, which=2), the_book=the_book, maker_bands=band)
    assert {"of-one-bank", "hose-is-off"} <= both_out


def test_a_reading_that_the_complaint_prevents_clears_nothing_and_is_asked_about():
    states = {"running": {"title": "Running"}}
    symptoms = {"no-start": {"title": "No start", "prevents": ["running"]}}
    conditions = {"idling": {"title": "Idling", "implies": ["running"]}}
    idling = {"primed": {**book().of("readings")["primed"].data, "when": "idling"}}
    the_book = book(states=states, symptoms=symptoms, conditions=conditions, readings=idling)
    judgement = judge(the_book, job(value("primed", 58), felt=["no-start"]))
    assert "does not run now" in judgement.taken[0].aside and not judgement.taken[0].counts
    assert fits(value("primed", 58), the_book=the_book, felt=["no-start"]) == EVERY
    now = value("primed", 58, fault_was="present")
    assert "pump-dead" not in fits(now, the_book=the_book, felt=["no-start"])


def test_an_abnormal_reading_taken_while_the_car_was_well_convicts_and_clears_nothing():
    absent = value("ground-drop", 0.9, "V", "meter", fault_was="absent")
    judgement = judge(book(), job(absent, felt=["no-power"], comes_and_goes=True))
    assert judgement.left_ids[0] == "ground-poor"
    assert fits(absent, felt=["no-power"], comes_and_goes=True) == EVERY
    before = judge(book(), job(felt=["no-power"], comes_and_goes=True))
    share = {item.fault: item.share for item in (*judgement.left, *judgement.besides)}
    assert share["ground-poor"] > 2 * next(i.share for i in before.left if i.fault == "ground-poor")


def test_a_reading_is_computed_for_each_bank_from_the_values_of_that_bank():
    entries = [
        value("idle", 36, which=1),
        value("idle", 36, which=2),
        value("hose-off", 44, which=1),
        value("hose-off", 39, which=2),
    ]
    each = {r: {**book().of("readings")[r].data, "each": "bank"} for r in ("idle", "hose-off", "hose-rise")}
    rises = [t for t in judge(book(readings=each), job(*entries)).taken if t.computed]
    assert [(t.which, t.said, t.verdict.kind, t.places) for t in rises] == [
        (1, "8.0 psi", "in band", (0, 2)),
        (2, "3.0 psi", "low", (1, 3)),
    ]


def test_what_is_read_once_serves_every_cylinder():
    each = {**book().of("readings")["idle"].data, "each": "cylinder"}
    the_book = book(readings={"idle": each})
    rises = [
        t
        for t in judge(
            the_book, job(value("hose-off", 44), value("idle", 36, which=1), value("idle", 41, which=2))
        ).taken
        if t.computed
    ]
    assert [(t.which, t.said) for t in rises] == [(1, "8.0 psi"), (2, "3.0 psi")]


def test_a_computed_reading_is_no_finer_than_what_it_may_be_out_by():
    # Two readings with the dial: 0.5 psi repeatability and half a division twice make 1.5 psi, so a tenth of a psi is said.
    assert judge(book(), job(value("idle", 36.2), value("hose-off", 44.46))).taken[-1].said == "8.3 psi"
    # Without a stated repeatability both errors count, 0.4 psi twice: 0.8 psi, so a hundredth is said.
    fine = [value("idle", 36.256, instrument="fine-sender"), value("hose-off", 44.5, instrument="fine-sender")]
    assert judge(book(), job(*fine)).taken[-1].said == "8.24 psi"


def test_few_readings_are_named_where_one_clears_every_stage():
    judgement = judge(
        book(), job(value("primed", 50), value("ground-drop", 0.9, "V", "meter"), felt=["no-power"], maker_bands=MAKER)
    )
    assert next(c.reasons for c in judgement.contradicted if c.fault == "filter-blocked") == ("ground-drop",)


def test_a_better_instrument_is_named_when_it_is_too_close():
    judgement = judge(book(), job(value("primed", 54.5), maker_bands=MAKER))
    assert judgement.taken[0].better == ("Fine sender",)


def test_the_vehicle_brings_its_own_bands():
    vehicle = {
        "title": "Parks van",
        "invented": True,
        "systems": ["port"],
        "has": ["test-port"],
        "fuel": "gasoline",
        "altitude": {"value": 0, "unit": "m"},
        "bands": {"primed": {"min": 53.5, "max": 60.5, "unit": "psi", "means": "limit", "basis": {"invented": True}}},
    }
    the_job = job(value("primed", 50), felt=["no-power"])
    del the_job.data["car"]
    the_job.data["vehicle"] = "parks-van"
    judgement = judge(book(vehicles={"parks-van": vehicle}), the_job)
    assert (judgement.taken[0].verdict.kind, judgement.taken[0].verdict.band.source) == ("low", "vehicle")
    the_job.data["maker_bands"] = {"primed": {"min": 45, "max": 55, "unit": "psi", "looked_up": "a later bulletin"}}
    judgement = judge(book(vehicles={"parks-van": vehicle}), the_job)
    assert (judgement.taken[0].verdict.kind, judgement.taken[0].verdict.band.source) == ("in band", "typed")


def test_of_connections_one_may_be_bad_alone_whatever_part_it_belongs_to():
    each = {**book().of("readings")["ground-drop"].data, "each": "connection"}
    the_book = book(readings={"ground-drop": each})
    bad, good = (value("ground-drop", v, "V", "meter", which=w) for v, w in ((0.9, "ground"), (0.1, "battery")))
    assert "ground-poor" in fits(bad, good, the_book=the_book)


def test_the_factor_is_of_the_readings_that_contradict_and_not_of_those_that_speak_for_a_fault():
    """By hand: *dry* with the hose off is .03 / 3 against 1 / 3; the idle that is high speaks for it and is left out."""
    band = {"idle": {"min": 30, "max": 40, "unit": "psi", "looked_up": "…"}}
    judgement = judge(book(), job(value("idle", 60), answer("hose-look", "dry"), maker_bands=band))
    found = next(c for c in judgement.contradicted if c.fault == "hose-is-off")
    assert (found.reasons, found.factor) == (("hose-look",), pytest.approx(0.03))
