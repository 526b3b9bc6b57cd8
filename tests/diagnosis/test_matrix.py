"""The matrix follows from the stages: like, differs, elsewhere, and silence that proves nothing."""

from __future__ import annotations

from bayleaf.diagnosis.car.car import Car, faults_of, readings_of
from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.matrix import matrix_of, matrix_of_system
from tests.diagnosis.sample import asked, book, fault, measured


def answers(matrix, fault_id, stage):
    return next(
        {r: set(a) for r, a in row.answers.items()}
        for row in matrix.rows
        if (row.fault, row.stage) == (fault_id, stage)
    )


def cell(the_book, fault_id, stage, reading, systems=("port",)):
    return answers(matrix_of(the_book, Car("a car", systems)), fault_id, stage).get(reading)


def test_a_stage_is_like_another_with_its_differences():
    matrix = matrix_of_system(book(), "port")
    assert answers(matrix, "filter-blocked", "nearly")["primed"] == {"low"}
    assert answers(matrix, "filter-blocked", "nearly")["idle"] == {"low", "normal"}
    assert answers(matrix, "filter-blocked", "nearly")["hose-rise"] == {"normal"}


def test_elsewhere_makes_normal_the_readings_on_the_paths_it_names():
    row = answers(matrix_of_system(book(), "port"), "filter-blocked", "partly")
    assert row["hose-look"] == {"dry"}  # on the reference path; a question's own normal
    assert row["ground-drop"] == {"normal"}  # both ends on the pump circuit


def test_silence_is_any_answer():
    assert "hose-look" not in answers(matrix_of_system(book(), "port"), "pump-dead", "dead")


def test_elsewhere_never_covers_trims_gases_or_engine_speed():
    trim = {
        "fuel-trim": {
            "title": "Trim",
            "reference": "none",
            "units": {"%": "none"},
            "shown": {"customary": "%", "si": "%"},
            "plausible": {"min": -100, "max": 100, "unit": "%", "basis": {"practice": True}},
        }
    }
    the_book = book(quantities=trim, readings={"trim": measured("Trim", "fuel-trim", at="manifold")})
    assert cell(the_book, "filter-blocked", "partly", "trim") is None
    assert cell(the_book, "filter-blocked", "partly", "hose-look") == {"dry"}


def test_elsewhere_asks_both_ends_of_an_electrical_reading_to_lie_on_one_path():
    crossing = measured("Crossing", "voltage-drop", between=["hose", "ground"])
    the_book = book(readings={"crossing": crossing})
    assert cell(the_book, "filter-blocked", "partly", "crossing") is None


def test_a_reading_between_two_points_exists_where_one_path_joins_them():
    crossing = measured("Crossing", "voltage-drop", between=["hose", "ground"])
    along = measured("Along", "voltage-drop", between=["battery", "ground"])
    the_book = book(readings={"crossing": crossing, "along": along})
    found = readings_of(the_book, layout_of(the_book), Car("a car", ("port",)))
    assert "along" in found and "crossing" not in found


def test_what_differs_in_a_system_overrides_the_stage_there_only():
    data = book().of("faults")["filter-blocked"].data
    differing = {
        **data,
        "differs": {
            "port": {"all": {"idle": "high"}, "nearly": {"primed": "normal"}},
            "feed": {"all": {"idle": "low"}},
        },
    }
    the_book = book(faults={"filter-blocked": differing})
    assert cell(the_book, "filter-blocked", "partly", "idle") == {"high"}
    assert cell(the_book, "filter-blocked", "nearly", "idle") == {"high"}
    assert cell(the_book, "filter-blocked", "nearly", "primed") == {"normal"}
    assert cell(the_book, "filter-blocked", "nearly", "idle", ("port", "feed")) == {"low"}


def test_a_difference_in_a_stage_reaches_the_stages_like_it():
    data = book().of("faults")["filter-blocked"].data
    the_book = book(faults={"filter-blocked": {**data, "differs": {"port": {"partly": {"hose-rise": "high"}}}}})
    assert cell(the_book, "filter-blocked", "nearly", "hose-rise") == {"high"}


def test_low_does_not_accept_a_none_that_was_said():
    matrix = matrix_of_system(book(), "port")
    assert "pump-dead" in matrix.faults_in(matrix.fits("primed", {"none"}))
    assert "filter-blocked" not in matrix.faults_in(matrix.fits("primed", {"none"}))


def test_none_of_a_question_is_an_answer_like_any_other():
    the_book = book(
        readings={"level": asked("Fuel level", ["none", "low", "full"], "full", at="pump")},
        faults={"tank-empty": fault("Tank empty", "pump", {"empty": {"level": "none"}}, {"no-power": "always"})},
    )
    matrix = matrix_of_system(the_book, "port")
    assert "tank-empty" not in matrix.faults_in(matrix.fits("level", {"low"}))


def test_a_fault_occurs_where_a_path_runs_through_its_part():
    the_book = book()
    layout = layout_of(the_book)
    assert "filter-blocked" in faults_of(the_book, layout, Car("", ("port",)))
    assert "filter-blocked" not in faults_of(the_book, layout, Car("", ("feed",)))


def test_a_fault_may_name_its_systems_itself():
    named = {**book().of("faults")["spark-weak"].data, "systems": ["feed"]}
    the_book = book(faults={"spark-weak": named})
    assert faults_of(the_book, layout_of(the_book), Car("", ("feed",))) == ["spark-weak"]


def test_a_part_of_a_part_lies_on_its_paths():
    the_book = book(
        faults={
            "valve-open": fault(
                "Check valve open", "check-valve", {"open": {"primed": "normal"}}, {"long-crank": "always"}
            )
        }
    )
    assert "valve-open" in faults_of(the_book, layout_of(the_book), Car("", ("port",)))


def test_a_reading_at_a_feature_needs_the_feature():
    the_book = book()
    layout = layout_of(the_book)
    assert "primed" in readings_of(the_book, layout, Car("", ("port",), frozenset({"test-port"})))
    assert "primed" not in readings_of(the_book, layout, Car("", ("port",), frozenset()))
    assert "idle" in readings_of(the_book, layout, Car("", ("port",), frozenset()))


def test_a_part_on_no_path_belongs_to_every_car():
    the_book = book()
    assert "spark-seen" in readings_of(the_book, layout_of(the_book), Car("", ("feed",)))
    assert "idle" not in readings_of(the_book, layout_of(the_book), Car("", ("feed",)))


def test_a_computed_reading_needs_its_inputs():
    the_book = book(readings={"hose-off": measured("Pressure with the hose off", "rail-pressure", at="test-port")})
    assert "hose-rise" not in readings_of(the_book, layout_of(the_book), Car("", ("port",), frozenset()))


def test_stages_share_the_weight_of_their_fault():
    weights = {(row.fault, row.stage): row.weight for row in matrix_of_system(book(), "port").rows}
    assert weights["filter-blocked", "partly"] == weights["filter-blocked", "nearly"] == 4.5
    assert weights["hose-is-off", "off"] == 3
    assert weights["diaphragm-leaks", "leaking"] == 1


def test_a_retired_fault_is_no_candidate():
    retired = {**book().of("faults")["pump-dead"].data, "status": "retired", "replaced_by": "ground-poor"}
    assert "pump-dead" not in [row.fault for row in matrix_of_system(book(faults={"pump-dead": retired}), "port").rows]


def test_stages_in_a_circle_end():
    circle = fault(
        "Circle",
        "filter",
        {"a": {"like": "b", "primed": "low"}, "b": {"like": "a", "idle": "low"}},
        {"no-power": "always"},
    )
    assert cell(book(faults={"circle": circle}), "circle", "a", "primed") == {"low"}


BOOST = {
    "title": "Turbocharger",
    "family": "induction",
    "has": "none",
    "bands": "none",
    "paths": [{"name": "charge air", "carries": "air", "through": ["charge-hose"]}],
}


def with_boost(fault_id: str, **more: object):
    """The book with a second family, and one of the faults of the first one saying something of it."""
    return book(
        components={"charge-hose": {"title": "Charge hose"}},
        systems={"boost": BOOST},
        readings={
            "hose-leak": asked("Leak of a charge hose", ["tight", "leaks"], "tight", at="charge-hose"),
            "shortfall": measured("Shortfall", "pressure-change", at="charge-hose"),
        },
        faults={fault_id: {**book().of("faults")[fault_id].data, **more}},
    )


def test_the_readings_of_another_family_are_made_normal_only_in_a_car_that_has_the_path():
    said = with_boost("filter-blocked", elsewhere={"normal_on": ["charge air", "reference"], "because": "…"})
    assert cell(said, "filter-blocked", "partly", "hose-leak", ("port", "boost")) == {"tight"}
    assert cell(said, "filter-blocked", "partly", "hose-look", ("port", "boost")) == {"dry"}
    assert cell(said, "filter-blocked", "partly", "hose-leak") is None
    unsaid = with_boost("filter-blocked", elsewhere={"normal_on": ["reference"], "because": "…"})
    assert cell(unsaid, "filter-blocked", "partly", "hose-leak", ("port", "boost")) is None
    assert answers(matrix_of_system(said, "port"), "filter-blocked", "nearly") == answers(
        matrix_of_system(unsaid, "port"), "filter-blocked", "nearly"
    )


def test_a_stage_stands_above_elsewhere_on_a_path_of_another_family():
    stages = {
        **book().of("faults")["filter-blocked"].data["stages"],
        "nearly": {"like": "partly", "shortfall": ["normal", "high"]},
    }
    said = with_boost("filter-blocked", stages=stages, elsewhere={"normal_on": ["charge air"], "because": "…"})
    assert cell(said, "filter-blocked", "partly", "shortfall", ("port", "boost")) == {"normal"}
    assert cell(said, "filter-blocked", "nearly", "shortfall", ("port", "boost")) == {"normal", "high"}


def test_what_is_worked_out_from_boost_or_gases_is_never_made_normal_elsewhere():
    change = book().of("quantities")["pressure-change"].data
    worked_out = {
        **measured("Shortfall of boost", "pressure-change", at="manifold"),
        "computed": {"difference": {"of": "asked-boost", "less": "idle"}, "quantity": "pressure-change"},
    }
    del worked_out["quantity"]
    for quantity, expected in (("boost-pressure", None), ("lambda", None), ("pressure-change", {"normal"})):
        source = measured("Asked", quantity, at="manifold", purpose="computation")
        the_book = book(quantities={quantity: change}, readings={"asked-boost": source, "worked-out": worked_out})
        assert cell(the_book, "filter-blocked", "partly", "worked-out") == expected
