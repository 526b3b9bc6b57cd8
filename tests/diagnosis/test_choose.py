"""The band that rules is the one that knows most of this very car; an expectation carries its own doubt."""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.car.car import car_of_job
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.verdicts.choose import band_of
from bayleaf.diagnosis.verdicts.compute import CannotCompute, Desk, Known
from bayleaf.quantities import to_si
from tests.diagnosis.sample import PRACTICE, book, job, measured, value

PSI = to_si(1, "psi", "gauge")
VACUUM = {
    "title": "Manifold vacuum",
    "reference": "vacuum",
    "units": {"inHg": "none"},
    "shown": {"customary": "inHg", "si": "inHg"},
    "plausible": {"min": 0, "max": 30, "unit": "inHg", "basis": PRACTICE},
}
RISE = {
    "title": "Regulator's rise",
    "inputs": {"manifold_vacuum": {"quantity": "vacuum", "unit": "inHg", "default": 18, "min": 0, "max": 25}},
    "constants": "none",
    "formula": {"rise": "-above_ambient(gauge(manifold_vacuum))"},
    "result": {"rise": {"quantity": "pressure-change", "unit": "psi", "digits": 3}},
}
EXPECTED = {
    "expected": {"calculator": "rise-expected", "inputs": {"manifold_vacuum": {"reading": "vacuum-idle"}}},
    "within": {"value": 1.5, "unit": "psi"},
    "means": "limit",
    "basis": PRACTICE,
}


def expecting(**bands: dict):
    system = book().of("systems")["port"].data
    gauge = {
        "title": "Vacuum gauge",
        "measures": ["vacuum"],
        "range": {"min": 0, "max": 30, "unit": "inHg"},
        "error": {"value": 0.5, "unit": "inHg"},
    }
    return book(
        quantities={"vacuum": VACUUM},
        calculators={"rise-expected": RISE},
        equipment={"vacuum-gauge": gauge},
        readings={"vacuum-idle": measured("Vacuum at idle", "vacuum", at="manifold")},
        systems={"port": {**system, "bands": {**system["bands"], "hose-rise": EXPECTED, **bands}}},
    )


VACUUM_18 = value("vacuum-idle", 18, "inHg", "vacuum-gauge")


def chosen(the_book, reading, *readings, **more):
    the_job = job(*readings, **more)
    return band_of(Desk(the_book), car_of_job(the_book, the_job.data), reading, the_job)[0]


def test_the_makers_figure_typed_into_the_job_comes_first():
    typed = {"primed": {"min": 53.5, "max": 60.5, "unit": "psi", "looked_up": "service information"}}
    band = chosen(book(), "primed", maker_bands=typed)
    assert (band.source, band.spread, band.low) == ("typed", False, pytest.approx(53.5 * PSI))
    assert "service information" in band.words


def test_without_it_the_general_spread_rules_and_says_what_it_is():
    band = chosen(book(), "primed")
    assert (band.source, band.spread, band.system) == ("spread", True, "port")
    assert band.text == "36–65 psi (249–448 kPa)"


def test_the_unit_in_which_a_band_is_written_does_not_matter():
    typed = {"primed": {"min": 379.2, "max": 427.5, "unit": "kPa", "looked_up": "…"}}
    assert chosen(book(), "primed", maker_bands=typed).low == pytest.approx(55 * PSI, rel=1e-4)


def test_an_expectation_is_computed_from_another_reading():
    # 18 inHg is 8.841 psi (NIST SP 811 factors): expected 8.841 psi, within 1.5 psi.
    judgement = judge(
        expecting(),
        job(VACUUM_18, value("idle", 36, instrument="fine-sender"), value("hose-off", 44.8, instrument="fine-sender")),
    )
    rise = judgement.taken[-1].verdict
    assert (rise.kind, rise.band.source) == ("in band", "expected")
    assert (rise.band.low / PSI, rise.band.high / PSI) == (
        pytest.approx(7.341, abs=1e-3),
        pytest.approx(10.341, abs=1e-3),
    )


def test_the_doubt_of_the_reading_it_is_computed_from_is_allowed_for():
    # Half an inch of mercury is 0.2456 psi; the two readings of the sender add 0.4 psi each.
    judgement = judge(
        expecting(),
        job(VACUUM_18, value("idle", 36, instrument="fine-sender"), value("hose-off", 44.8, instrument="fine-sender")),
    )
    assert judgement.taken[-1].verdict.allowance / PSI == pytest.approx(0.8 + 0.2456, abs=1e-3)


def test_an_expectation_waits_for_its_reading_and_says_so():
    judgement = judge(expecting(), job(value("idle", 36), value("hose-off", 44)))
    rise = judgement.taken[-1].verdict
    assert rise.kind == "no band"
    assert "Take this reading first: Vacuum at idle." in rise.what_to_do


def test_a_reading_of_a_calculator_is_computed_from_its_inputs():
    computed = {
        **book().of("readings")["hose-rise"].data,
        "computed": {"calculator": "rise-expected", "inputs": {"manifold_vacuum": {"reading": "vacuum-idle"}}},
    }
    the_book = expecting(**{"hose-rise": {"min": 6, "max": 10, "unit": "psi", "means": "limit", "basis": PRACTICE}})
    the_book.of("readings")["hose-rise"].data.clear()
    the_book.of("readings")["hose-rise"].data.update(computed)
    rise = judge(the_book, job(VACUUM_18)).taken[-1]
    assert (rise.reading, rise.computed, rise.said, rise.verdict.kind) == ("hose-rise", True, "8.84 psi", "in band")


SHARE = {
    "title": "Share",
    "reference": "none",
    "units": {"%": "none"},
    "shown": {"customary": "%", "si": "%"},
    "plausible": {"min": 0, "max": 100, "unit": "%", "basis": PRACTICE},
}
HALF = {
    "title": "Half",
    "inputs": {"x": {"quantity": "share", "unit": "%", "default": 1, "min": 0, "max": 100}},
    "constants": "none",
    "formula": {"half": "x / 2"},
    "result": {"half": {"quantity": "share", "unit": "%", "digits": 3}},
}


def test_facts_of_the_car_are_put_in():
    fuel = {"title": "E10", "ethanol": {"min": 8, "max": 10, "unit": "%", "basis": PRACTICE}}
    the_book = book(fuels={"e10": fuel}, quantities={"share": SHARE}, calculators={"half": HALF})
    car = car_of_job(the_book, {"car": {"systems": ["port"], "has": "none", "fuel": "e10"}})
    assert Desk(the_book).calculate({}, car, "half", {"x": {"car": "fuel-ethanol"}}, None).value == pytest.approx(0.045)
    with pytest.raises(CannotCompute, match="missing"):
        Desk(the_book).calculate({}, car, "half", {"x": {"car": "altitude"}}, None)
    assert Desk(the_book).calculate({}, car, "half", {}, None).value == pytest.approx(0.005)  # its own default


def test_a_difference_needs_both_values():
    with pytest.raises(CannotCompute, match="Idle pressure"):
        Desk(book()).difference({"hose-off": Known(1.0)}, "hose-off", "idle")


def test_a_calculator_that_gives_no_number_gives_no_band():
    the_book = expecting()
    the_book.of("calculators")["rise-expected"].data["formula"] = {
        "rise": "-above_ambient(gauge(manifold_vacuum)) / (1 - 1)"
    }
    rise = judge(the_book, job(VACUUM_18, value("idle", 36), value("hose-off", 44))).taken[-1].verdict
    assert rise.kind == "no band"
