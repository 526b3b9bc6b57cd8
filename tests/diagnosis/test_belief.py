"""Belief worked by hand, and what must hold of it on any book."""

from __future__ import annotations

import random

import pytest

from bayleaf.diagnosis.belief.belief import Seen, answers_among, complaint, ratio
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.say import lines
from tests.data import book_of
from tests.diagnosis.sample import book, job, value
from tests.diagnosis.test_against_definitions import random_book, random_job

QUESTION = frozenset({"dry", "wet", "off"})


def of_three(*answers: str, clears: bool = True) -> Seen:
    return Seen("hose-look", frozenset(answers), QUESTION, "hose-look", clears)


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        # Bayes' rule with 3 in 100 misleading and shared by all three answers, over 1/3 for a fault that says nothing.
        ({"wet"}, (0.97 + 0.01) * 3),
        ({"dry"}, 0.01 * 3),
        ({"wet", "dry"}, (0.97 / 2 + 0.01) * 3),
        (None, 1),
        ({"wet", "dry", "off"}, 1),
    ],
)
def test_a_reading_weighs_as_bayes_says(said, wanted):
    assert ratio(said and frozenset(said), of_three("wet")) == pytest.approx(wanted)


def test_a_verdict_that_holds_every_answer_weighs_nothing():
    assert ratio(frozenset({"wet"}), of_three(*QUESTION)) == 1


def test_what_was_read_while_the_car_was_well_speaks_for_a_fault_and_never_against_it():
    assert ratio(frozenset({"dry"}), of_three("wet", clears=False)) == 1
    assert ratio(frozenset({"wet"}), of_three("wet", clears=False)) == pytest.approx(0.98 * 3)


def test_a_typed_number_is_low_normal_or_high_and_none_joins_low():
    the_book = book()
    low = answers_among(the_book, "primed", frozenset({"none", "low"}))
    assert low == (frozenset({"low"}), frozenset({"low", "normal", "high"}))
    seen = Seen("primed", *low, "primed")
    assert ratio(frozenset({"none"}), seen) == ratio(frozenset({"low"}), seen) == pytest.approx(0.98 * 3)
    said = answers_among(the_book, "primed", frozenset({"none"}))
    assert said == (frozenset({"none"}), frozenset({"none", "low", "normal", "high", "unsteady"}))


def test_a_complaint_weighs_what_is_felt_what_is_not_said_and_what_is_missing():
    feels = {"no-power": "always", "long-crank": "always", "rough-idle": "sometimes"}
    assert complaint(feels, ["no-power"]) == pytest.approx(0.9 * 0.3)
    assert complaint(feels, ["no-power", "rough-idle"]) == pytest.approx(0.9 * 0.35 * 0.3)
    assert complaint(feels, ["no-power", "long-crank", "whine"]) == pytest.approx(0.9 * 0.9 * 0.03)
    assert complaint(feels, []) == 1


def test_a_computed_reading_and_its_inputs_count_once():
    """By hand: the rise is low and the idle is high, both from one hose that is off; the stronger of the two counts."""
    band = {"idle": {"min": 30, "max": 38, "unit": "psi", "looked_up": "…"}}
    both = judge(book(), job(value("idle", 45), value("hose-off", 46), maker_bands=band))
    assert [t.verdict.kind for t in both.taken if t.reading in ("idle", "hose-rise")] == ["high", "low"]
    one = judge(book(), job(value("idle", 45), maker_bands=band))
    shares = [next(i.share for i in j.left if i.fault == "hose-is-off") for j in (both, one)]
    odds = [
        share / next(i.share for i in (*j.left, *j.besides) if i.fault == "ground-poor")
        for share, j in zip(shares, (both, one))
    ]
    assert odds[0] == pytest.approx(odds[1])  # the ground is silent about both


def contradicted(data: dict, the_job: dict) -> set[str]:
    the_book = book_of({**data, "jobs": {"j": the_job}})
    return {item.fault for item in judge(the_book, the_book.of("jobs")["j"]).contradicted}


@pytest.mark.parametrize("block", range(4))
def test_a_symptom_more_or_less_changes_nothing_of_what_is_contradicted(block):
    for seed in range(block * 50, block * 50 + 50):
        r = random.Random(seed)
        data = random_book(r)
        the_job = random_job(r, data)
        found = [contradicted(data, {**the_job, "felt": felt}) for felt in ("none", ["x"], ["x", "y"])]
        assert found[0] == found[1] == found[2], f"seed {seed}"  # neither x nor y prevents a reading


@pytest.mark.parametrize("block", range(4))
def test_a_reading_that_may_be_anything_changes_no_share(block):
    """A value in the middle of a spread that is open to no side may be low, normal or high of a typed number."""
    reached = 0
    for seed in range(block * 50, block * 50 + 50):
        r = random.Random(seed)
        data = random_book(r)
        band = {"min": 10, "max": 90, "unit": "V", "means": "spread", "basis": {"practice": True}}
        taken = (
            {e["reading"] for e in the_job["readings"] if "reading" in e}
            if (the_job := random_job(r, data))["readings"] != "none"
            else set()
        )
        free = [id for id, x in data["readings"].items() if "quantity" in x and id not in taken]
        if not free:
            continue
        for system in data["systems"].values():
            system["bands"][free[0]] = band
        maker = {} if the_job["maker_bands"] == "none" else the_job["maker_bands"]
        the_job["maker_bands"] = {id: b for id, b in maker.items() if id != free[0]} or "none"
        more = {"reading": free[0], "value": 50, "unit": "V", "instrument": "e1"}
        entries = [] if the_job["readings"] == "none" else the_job["readings"]
        outside = []
        for readings in (entries, [*entries, more]):
            the_book = book_of({**data, "jobs": {"j": {**the_job, "readings": readings or "none"}}})
            outside.append(judge(the_book, the_book.of("jobs")["j"]).outside)
        assert outside[0] == pytest.approx(outside[1]), f"seed {seed}"
        reached += 1
    assert reached >= 20


def test_a_mended_fault_is_no_cause_and_the_rest_share_its_weight():
    before, after = judge(book(), job()), judge(book(), job({"repaired": "pump-dead"}))
    assert "pump-dead" not in {i.fault for i in (*after.left, *after.besides)}
    assert after.outside == pytest.approx(before.outside) == pytest.approx(0.08)


CODE = {"title": "Hose", "code": "P9999", "reports": [{"reading": "hose-look", "shows": "wet"}]}
HISTORY = {"title": "Ran dry", "summary": "…", "faults": ["pump-dead"], "parts": ["regulator"]}


def shares(the_book, *readings: dict, **more: object) -> dict[str, float]:
    judgement = judge(the_book, job(*readings, **more))
    return {item.fault: item.share for item in (*judgement.left, *judgement.besides)}


def test_a_code_weighs_through_what_it_reports_and_clears_nothing():
    """By hand: 3 in 10 codes stand for something else; of three answers (.7 + .1) × 3 where it fits, .1 × 3 where not."""
    the_book = book(codes={"p9999": CODE})
    plain, coded = shares(the_book), shares(the_book, codes=["p9999"])
    assert coded.keys() == plain.keys()
    fits = coded["diaphragm-leaks"] / coded["ground-poor"] / (plain["diaphragm-leaks"] / plain["ground-poor"])
    unlike = coded["hose-is-off"] / coded["ground-poor"] / (plain["hose-is-off"] / plain["ground-poor"])
    assert (fits, unlike) == (pytest.approx(0.8 * 3), pytest.approx(0.1 * 3))  # the ground is silent about the hose


def test_what_a_code_reports_counts_once_where_it_was_read_too():
    the_book = book(codes={"p9999": CODE})
    wet = {"reading": "hose-look", "answer": "wet"}
    assert shares(the_book, wet, codes=["p9999"]) == pytest.approx(shares(the_book, wet))


def test_a_code_may_stand_for_any_of_its_readings():
    either = {**CODE, "reports": [{"reading": "hose-look", "shows": "wet"}, {"reading": "hose-look", "shows": "off"}]}
    the_book = book(codes={"p9999": either})
    plain, coded = shares(the_book), shares(the_book, codes=["p9999"])
    odds = [coded[f] / plain[f] for f in ("diaphragm-leaks", "hose-is-off")]
    assert odds[0] == pytest.approx(odds[1])


def test_a_code_that_no_reading_stands_for_weighs_nothing():
    the_book = book(codes={"p9999": {**CODE, "reports": [{"words": "The count of misfires."}]}})
    assert shares(the_book, codes=["p9999"]) == pytest.approx(shares(the_book))


def test_history_makes_faults_likelier_by_name_and_by_part_and_clears_nothing():
    the_book = book(histories={"ran-dry": HISTORY})
    plain, after = shares(the_book), shares(the_book, history=["ran-dry"])
    assert after.keys() == plain.keys()
    for fault in ("pump-dead", "diaphragm-leaks"):  # by its name, and as a fault of the regulator
        assert after[fault] / after["hose-is-off"] == pytest.approx(3 * plain[fault] / plain["hose-is-off"])
    assert judge(the_book, job(history=["ran-dry"])).outside == pytest.approx(
        0.08
    )  # the book's causes share it among them


def test_codes_and_history_are_said():
    the_book = book(codes={"p9999": CODE}, histories={"ran-dry": HISTORY})
    said = lines(judge(the_book, job(codes=["p9999"], history=["ran-dry"])), the_book)
    assert "Codes: P9999 (Hose)." in said and "Before it: Ran dry." in said
