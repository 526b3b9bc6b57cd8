"""A mechanism suggests what pipes and wires do, for a person to correct."""

from __future__ import annotations

import pytest

from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.suggest import MECHANISMS, suggest
from tests.diagnosis.sample import book, measured


def suggested(part: str, mechanism: str, the_book=None) -> dict[str, tuple[str, ...]]:
    the_book = the_book or book()
    return {s.reading: s.answers for s in suggest(the_book, layout_of(the_book), part, mechanism)}


def test_a_narrow_place_starves_what_is_behind_it_and_raises_what_is_ahead():
    ahead = book(readings={"pump-outlet": measured("Pump outlet", "rail-pressure", at="pump")})
    found = suggested("filter", "restricts", ahead)
    assert found["primed"] == ("normal", "low")
    assert found["pump-outlet"] == ("normal", "high")


def test_the_drop_over_a_narrow_place_is_high():
    drop = book(readings={"filter-drop": measured("Filter drop", "pressure-change", at="filter")})
    assert suggested("filter", "restricts", drop)["filter-drop"] == ("high",)


def test_every_reading_on_the_own_paths_and_beside_them_is_listed():
    assert list(suggested("filter", "restricts")) == ["primed", "idle", "ground-drop"]  # the circuit shares the pump


def test_what_is_not_for_diagnosis_is_left_out():
    assert "hose-off" not in suggested("filter", "restricts")


def test_lost_volts_show_across_the_place_that_loses_them():
    low_side = book(
        readings={
            "feed-drop": measured("Feed drop", "voltage-drop", between=["battery", "pump"]),
            "ground-drop": measured("Ground drop", "voltage-drop", between=["pump", "battery"]),
        }
    )
    found = suggested("ground", "restricts", low_side)
    assert found["ground-drop"] == ("high",)  # from the pump on round to the battery
    assert found["feed-drop"] == ("normal", "low")


def test_an_open_wire_leaves_nothing_of_what_it_fed():
    found = suggested("ground", "opens")
    assert found["primed"] == ("none",)


def test_a_question_at_the_part_may_have_any_of_its_other_answers():
    assert suggested("hose", "leaks")["hose-look"] == ("wet", "off")
    assert suggested("regulator", "leaks")["hose-look"] == ("dry",)


def test_trims_are_left_to_a_person():
    trim = {
        "fuel-trim": {
            "title": "Trim",
            "reference": "none",
            "units": {"V": "none"},
            "shown": {"customary": "V", "si": "V"},
            "plausible": {"min": -100, "max": 100, "unit": "V", "basis": {"practice": True}},
        }
    }
    assert (
        suggested(
            "filter", "restricts", book(quantities=trim, readings={"trim": measured("Trim", "fuel-trim", at="rail")})
        )["trim"]
        == ()
    )


@pytest.mark.parametrize("mechanism", MECHANISMS)
@pytest.mark.parametrize("part", ["pump", "filter", "regulator", "hose", "ground", "check-valve"])
def test_every_mechanism_suggests_answers_that_the_readings_have(part, mechanism):
    the_book = book()
    for reading, answers in suggested(part, mechanism).items():
        known = the_book.of("readings")[reading].data.get("answers", ["none", "low", "normal", "high", "unsteady"])
        assert set(answers) <= set(known)


def test_a_part_on_no_path_has_nothing_to_suggest():
    assert suggested("spark-plug", "opens") == {}
