"""The graph of the book says what anybody of the trade would say of these cars. Common practice, no source."""

from __future__ import annotations

from pathlib import Path

import pytest

from bayleaf.diagnosis.car.layout import layout_of
from bayleaf.diagnosis.faults.graph import graph_of
from bayleaf.diagnosis.faults.spared import Why, holds_in, why_of
from bayleaf.records import load

TURBO = ("port-injection-return", "turbocharged-induction")


@pytest.fixture(scope="module")
def the_book():
    return load(Path(__file__).resolve().parents[2])


def moves(book, start: str, end: str, reading: str, systems: tuple[str, ...]) -> bool:
    """Whether one variable moves another while a reading is taken on a car with these systems."""
    graph = graph_of(book)
    return bool(
        graph.reach(graph.mask([start]), holds_in(book, book.of("readings")[reading]), systems) & graph.mask([end])
    )


def why(book, fault: str, reading: str, *systems: str) -> Why:
    return why_of(book, layout_of(book), systems, book.of("faults")[fault], book.of("readings")[reading])


def test_boost_reaches_the_regulator_that_follows_the_manifold_and_no_other(the_book):
    assert moves(the_book, "charge-pressure", "regulator-reference", "rail-pressure-load", TURBO)
    assert why(the_book, "wastegate-stuck-open", "rail-pressure-load", *TURBO) is Why.REACHED
    assert why(the_book, "wastegate-stuck-open", "rail-pressure-primed", *TURBO) is Why.SPARED
    assert not moves(
        the_book, "regulator-reference", "fuel-pressure", "rail-pressure-load", ("port-injection-returnless",)
    )


def test_with_its_hose_off_the_regulator_no_longer_follows_and_the_rise_still_shows_it(the_book):
    assert why(the_book, "regulator-hose-blocked", "rail-pressure-hose-off", "port-injection-return") is Why.SPARED
    assert why(the_book, "regulator-hose-blocked", "rail-pressure-rise", "port-injection-return") is Why.REACHED


def test_a_sensor_moves_what_it_measures_only_where_the_loop_is_closed_through_it(the_book):
    closed, open_loop = ("port-injection-demand",), ("port-injection-return",)
    assert moves(the_book, "pressure-signal", "fuel-pressure", "rail-pressure-idle", closed)
    assert moves(the_book, "pressure-signal", "pump-turning", "rail-pressure-idle", closed)
    assert not moves(the_book, "pressure-signal", "pump-turning", "rail-pressure-idle", open_loop)
    assert not moves(the_book, "pressure-signal", "pump-draw", "pump-current-commanded", closed)  # the tester commands


def test_the_front_sensor_corrects_the_mixture_in_closed_loop_and_not_at_full_load(the_book):
    assert moves(the_book, "exhaust-leak", "mixture", "total-trim-raised", ("port-injection-return",))
    assert not moves(the_book, "exhaust-content", "mixture", "filling-load", ("port-injection-return",))


def test_a_weak_alternator_leaves_alone_what_is_read_with_the_engine_and_its_circuits_at_rest(the_book):
    assert why(the_book, "alternator-undercharging", "fuel-in-tank", "port-injection-return") is Why.SPARED
    assert why(the_book, "alternator-undercharging", "rail-pressure-load", "port-injection-return") is Why.REACHED


def test_a_dead_pump_has_no_running_readings(the_book):
    assert why(
        the_book, "pump-dead", "where-pressure-stands", "port-injection-return", "three-way-converter-exhaust"
    ) in (
        Why.PREVENTED,
        Why.REACHED,
    )
    assert why(the_book, "pump-dead", "line-followed", "port-injection-return") is Why.SPARED


def test_a_circuit_is_alike_wherever_it_opens_and_a_part_that_is_looked_at_is_never_spared(the_book):
    assert why(the_book, "water-in-fuel", "module-looked-at", "port-injection-return") is Why.LOOKED_AT
    assert why(the_book, "strainer-blocked", "module-looked-at", "port-injection-return") is Why.LOOKED_AT
    assert why(the_book, "pump-ground-resistance", "module-looked-at", "port-injection-return") is Why.SPARED
