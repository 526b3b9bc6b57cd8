"""The matrix follows from the stages: like, differs, effects, the graph, and silence that proves nothing where something reaches."""

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


def test_what_nothing_reaches_is_healthy():
    row = answers(matrix_of_system(book(), "port"), "filter-blocked", "partly")
    assert row["hose-look"] == {"dry"}  # a look at a part that the fault is not in; a question's own healthy answer
    assert row["ground-drop"] == {"normal"}


def test_the_matrix_says_which_answers_are_the_graph_s_alone():
    matrix = matrix_of_system(book(), "port")
    assert matrix.faults_in(matrix.by_graph["hose-look"]) == ["filter-blocked"]
    assert matrix.by_graph["primed"] == 0


def test_silence_is_any_answer():
    assert "hose-look" not in answers(matrix_of_system(book(), "port"), "pump-dead", "dead")


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
            "hose-leak": asked(
                "Leak of a charge hose", ["tight", "leaks"], "tight", at="charge-hose", observes=["charge-hose"]
            ),
            "shortfall": measured("Shortfall", "pressure-change", at="charge-hose"),
        },
        faults={fault_id: {**book().of("faults")[fault_id].data, **more}},
    )


def test_the_readings_of_another_family_are_healthy_only_in_a_car_that_has_them():
    said = with_boost("filter-blocked")
    assert cell(said, "filter-blocked", "partly", "hose-leak", ("port", "boost")) == {"tight"}
    assert cell(said, "filter-blocked", "partly", "hose-look", ("port", "boost")) == {"dry"}
    assert cell(said, "filter-blocked", "partly", "hose-leak") is None


def test_a_stage_stands_above_the_graph():
    stages = {
        **book().of("faults")["filter-blocked"].data["stages"],
        "nearly": {"like": "partly", "hose-leak": ["tight", "leaks"]},
    }
    said = with_boost("filter-blocked", stages=stages)
    assert cell(said, "filter-blocked", "partly", "hose-leak", ("port", "boost")) == {"tight"}
    assert cell(said, "filter-blocked", "nearly", "hose-leak", ("port", "boost")) == {"tight", "leaks"}


def test_a_reading_that_looks_at_nothing_is_never_healthy_by_the_graph():
    assert cell(with_boost("filter-blocked"), "filter-blocked", "partly", "shortfall", ("port", "boost")) is None


def test_a_healthy_car_may_give_several_answers_and_more_with_a_system():
    look = asked("Look", ["dry", "damp", "wet"], "dry", at="hose", healthy=["dry", "damp"], observes=["hose"])
    assert cell(book(readings={"look": look}), "filter-blocked", "partly", "look") == {"dry", "damp"}
    port = {**book().of("systems")["port"].data, "healthy": {"look": ["wet"]}}
    assert cell(book(readings={"look": look}, systems={"port": port}), "filter-blocked", "partly", "look") == {
        "dry",
        "damp",
        "wet",
    }


EFFECT = {
    "short": {"title": "Short of flow", "summary": "…", "shows": {"idle": "low", "hose-look": "wet", "primed": "low"}}
}


def test_an_effect_gives_way_to_the_stage_and_to_the_graph_and_not_to_the_stage_it_is_like():
    data = book().of("faults")["filter-blocked"].data
    stages = {"partly": data["stages"]["partly"], "short": {"like": "partly", "effect": ["short"], "primed": "none"}}
    the_book = book(effects=EFFECT, faults={"filter-blocked": {**data, "stages": stages}})
    assert cell(the_book, "filter-blocked", "short", "idle") == {"low"}  # not the normal of the stage that it is like
    assert cell(the_book, "filter-blocked", "short", "primed") == {"none"}
    assert cell(the_book, "filter-blocked", "short", "hose-look") == {"dry"}  # nothing reaches the hose


def test_a_reading_answers_as_another_unless_the_fault_speaks_of_it_or_nothing_reaches_it():
    cruise = measured("Pressure at cruise", "rail-pressure", at="rail", observes=["pressure"], answers_as="idle")
    spared = measured("Drop at cruise", "voltage-drop", at="ground", observes=["ground-loss"], answers_as="idle")
    the_book = book(readings={"cruise": cruise, "drop": spared})
    assert cell(the_book, "filter-blocked", "nearly", "cruise") == {"low", "normal"}
    assert cell(the_book, "hose-is-off", "off", "cruise") == {"high"}
    assert cell(the_book, "filter-blocked", "nearly", "drop") == {"normal"}
    data = book().of("faults")["filter-blocked"].data
    says = {**data, "stages": {**data["stages"], "nearly": {**data["stages"]["nearly"], "cruise": "unsteady"}}}
    the_book = book(readings={"cruise": cruise}, faults={"filter-blocked": says})
    assert cell(the_book, "filter-blocked", "nearly", "cruise") == {"unsteady"}
    assert cell(the_book, "filter-blocked", "partly", "cruise") == {"normal"}


RUNNING = {
    "conditions": {"at-idle": {"title": "At idle", "summary": "…", "implies": ["running"]}},
    "symptoms": {
        "no-start": {"title": "No start", "prevents": ["running"]},
        "no-power": {"title": "No power", "holds_back": ["at-idle"]},
    },
    "readings": {
        "idle": measured("Idle pressure", "rail-pressure", at="rail", when="at-idle", observes=["pressure"]),
        "hose-look": asked("Hose", ["dry", "wet", "off"], "dry", at="hose", when="at-idle", observes=["hose"]),
    },
}


def test_what_a_symptom_prevents_may_be_anything_and_is_never_none():
    data = book().of("faults")["filter-blocked"].data
    never = book(**RUNNING, faults={"filter-blocked": {**data, "felt_as": {"no-start": "always"}}})
    assert cell(never, "filter-blocked", "partly", "idle") is None  # although the stage says so
    assert cell(never, "filter-blocked", "partly", "hose-look") is None
    assert cell(never, "filter-blocked", "partly", "primed") == {"normal"}  # is not taken on a car that runs
    stages = {"shut": {"like": "partly", "felt": {"no-start": "always"}}, **data["stages"]}
    felt = {**data, "felt_as": {"no-start": "sometimes"}, "stages": stages}
    at_times = book(**RUNNING, faults={"filter-blocked": felt})
    assert cell(at_times, "filter-blocked", "shut", "idle") is None
    assert cell(at_times, "filter-blocked", "partly", "idle") == {"normal"}
    assert cell(at_times, "filter-blocked", "partly", "hose-look") == {"dry"}


def test_nothing_is_healthy_by_the_graph_where_the_fault_holds_the_car_back():
    the_book = book(**RUNNING)
    assert cell(the_book, "filter-blocked", "partly", "hose-look") is None
    assert cell(the_book, "filter-blocked", "partly", "idle") == {"normal"}  # it says so itself
