"""Readings that must agree, and instruments that can never decide, against cases worked by hand."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.say import lines
from tests.diagnosis.sample import book, job, value

PSI = {"unit": "psi"}
EQUAL = {"sum_of": ["hose-off"], "within": {"value": 2, **PSI}, "basis": {"practice": True}, "because": "One spring."}
MAKER = {"primed": {"min": 55, "max": 59, "unit": "psi", "looked_up": "…"}}


def related(*relations: dict):
    return book(readings={"primed": {**book().of("readings")["primed"].data, "agrees_with": list(relations)}})


def fine(reading: str, number: float) -> dict:
    return value(reading, number, instrument="fine-sender")


def test_readings_that_differ_by_more_than_the_relation_and_the_instruments_allow_are_named():
    the_book = related(EQUAL)
    # By hand: 2 psi and twice 0.4 psi of the instrument make 2.8 psi.
    (found,) = judge(the_book, job(fine("primed", 58), fine("hose-off", 55.1))).disagreements
    assert (found.reading, found.others, found.apart) == ("primed", ("hose-off",), "2.9 psi")
    assert judge(the_book, job(fine("primed", 58), fine("hose-off", 55.3))).disagreements == ()


def test_a_reading_may_be_made_up_of_several():
    the_book = related({**EQUAL, "sum_of": ["hose-off", "idle"]})
    agreeing = job(fine("primed", 58), fine("hose-off", 20), fine("idle", 36))  # 56 and 2 + 3 × 0.4 = 3.2 psi
    assert judge(the_book, agreeing).disagreements == ()
    (found,) = judge(the_book, job(fine("primed", 58), fine("hose-off", 20), fine("idle", 34))).disagreements
    assert found.apart == "4.0 psi"


def test_what_does_not_count_is_not_compared():
    the_book = related(EQUAL)
    entries = (fine("primed", 58) | {"fault_was": "absent"}, fine("hose-off", 40) | {"fault_was": "present"})
    assert judge(the_book, job(*entries, comes_and_goes=True)).disagreements == ()
    assert judge(the_book, job(fine("primed", 58))).disagreements == ()


def test_a_disagreement_is_said_before_the_readings():
    the_book = related(EQUAL)
    said = lines(judge(the_book, job(fine("primed", 58), fine("hose-off", 48))), the_book)
    line = "Does not agree: Primed pressure with Pressure with the hose off, 10 psi apart. One spring."
    assert said.index(line) < said.index("What was read")


def plan_with(instrument: str, *readings: str, **more: object) -> tuple[str, ...]:
    steps = [{"say": "Read it.", "takes": {"reading": r, "instrument": instrument}} for r in readings]
    takes = {"title": "Take it", "minutes": {"hands": 5}, "systems": ["port"], "steps": steps}
    hose_off = {k: v for k, v in book().of("readings")["hose-off"].data.items() if k != "purpose"}
    the_book = book(procedures={"take-it": takes}, readings={"hose-off": hose_off})
    judgement = judge(the_book, job(felt=["no-power"], shop=[instrument], **more))
    assert judgement.next
    return judgement.unable


def test_an_instrument_that_can_never_decide_says_so_before_the_test_and_names_one_that_can():
    # By hand: a band of 4 psi with 2.5 psi of guard band on either side leaves no window; 0.4 psi leaves 3.2 psi.
    (said,) = plan_with("gauge-0-100", "primed", maker_bands=MAKER)
    assert said.startswith("Gauge, 0 to 100 psi can never prove in band: Primed pressure (55–59 psi")
    assert said.endswith("Able to: Fine sender.")
    assert plan_with("fine-sender", "primed", maker_bands=MAKER) == ()


def test_a_pair_of_readings_that_can_never_decide_says_so_too():
    """By hand: the rise lies from 6 to 10 psi. One dial read twice is out by 1.5 psi, which leaves 1 psi; were the band
    1 psi wide nothing would be left of it, nor with the fine sender, which is out by 0.8 psi."""
    wide = {"min": 30, "max": 60, "unit": "psi", "looked_up": "…"}
    band = {"min": 7.5, "max": 8.5, "unit": "psi", "looked_up": "…"}
    (said,) = plan_with("gauge-0-100", "idle", "hose-off", maker_bands={"hose-rise": band, "idle": wide})
    assert said.startswith(
        "Gauge, 0 to 100 psi, read twice, can never prove in band: Rise with the hose off (7.5–8.5 psi"
    )
    assert said.endswith("No instrument of this book is able to.")
