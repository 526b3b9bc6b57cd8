"""The direction of the fault matrix against the physics of port_model, entry by entry.

The outside here is textbook physics (motor, pump with slip, orifice and laminar losses, spring regulator), worked by
scipy's root finder; see port_model. Each stage of a fault is put into the model at two or three severities that make
the stage what its name says; what each reading then shows against the healthy system must be among the answers that
the record gives. A value within the everyday spread of one car counts as normal.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from bayleaf.diagnosis.faults.matrix import Matrix, matrix_of_system
from bayleaf.records import load
from tests.reference.port_model import Port, readings

ROOT = Path(__file__).resolve().parents[2]
PSI, ML = 6894.757, 1e-6
HEALTHY = Port()

# fault, stage → systems with that fault, from mild to heavy inside the stage
STAGES: dict[tuple[str, str], list[Port]] = {
    ("fuel-filter-restricted", "within-reserve"): [replace(HEALTHY, filter=HEALTHY.filter * x) for x in (8, 20, 50)],
    ("fuel-filter-restricted", "partly"): [replace(HEALTHY, filter=HEALTHY.filter * x) for x in (80, 100)],
    ("fuel-filter-restricted", "nearly-blocked"): [replace(HEALTHY, filter=HEALTHY.filter * x) for x in (200, 1000)],
    ("pump-weak", "within-reserve"): [replace(HEALTHY, slip=HEALTHY.slip * x) for x in (1.7, 2.0)],
    ("pump-weak", "early"): [replace(HEALTHY, slip=HEALTHY.slip * x) for x in (2.6, 3.0)],
    ("pump-weak", "late"): [replace(HEALTHY, slip=HEALTHY.slip * x) for x in (5, 8)],
    ("pump-weak", "dragging"): [replace(HEALTHY, friction=HEALTHY.friction * x) for x in (1.5, 2.5, 3.5)],
    ("pump-dead", "dead"): [replace(HEALTHY, turns=False)],
    ("pump-relay-dead", "open"): [replace(HEALTHY, relay_closes=False)],
    ("pump-control-missing", "open"): [replace(HEALTHY, relay_closes=False)],
    ("pump-fuse-blown", "blown"): [replace(HEALTHY, relay_closes=False)],
    ("main-relay-dead", "open"): [replace(HEALTHY, relay_closes=False)],
    ("alternator-undercharging", "low"): [replace(HEALTHY, running_volts=x) for x in (12, 11, 10)],
    ("alternator-overcharging", "high"): [replace(HEALTHY, running_volts=x) for x in (15.5, 17)],
    ("pump-feed-resistance", "within-reserve"): [replace(HEALTHY, feed_ohm=x) for x in (0.15, 0.5)],
    ("pump-feed-resistance", "poor-contact"): [replace(HEALTHY, feed_ohm=x) for x in (0.75, 0.85)],
    ("pump-feed-resistance", "barely-connected"): [replace(HEALTHY, feed_ohm=x) for x in (1.5, 2.3, 3.0)],
    ("pump-feed-resistance", "open"): [replace(HEALTHY, feed_ohm=x) for x in (4, 1e3, 1e6)],
    ("pump-ground-resistance", "within-reserve"): [replace(HEALTHY, ground_ohm=x) for x in (0.15, 0.5)],
    ("pump-ground-resistance", "poor-contact"): [replace(HEALTHY, ground_ohm=x) for x in (0.75, 0.85)],
    ("pump-ground-resistance", "barely-connected"): [replace(HEALTHY, ground_ohm=x) for x in (1.5, 2.3, 3.0)],
    ("pump-ground-resistance", "open"): [replace(HEALTHY, ground_ohm=x) for x in (4, 1e3, 1e6)],
    ("strainer-blocked", "within-reserve"): [replace(HEALTHY, strainer=HEALTHY.strainer * x) for x in (118, 128)],
    ("strainer-blocked", "partly"): [replace(HEALTHY, strainer=HEALTHY.strainer * x) for x in (150, 250)],
    ("strainer-blocked", "mostly"): [replace(HEALTHY, strainer=HEALTHY.strainer * x) for x in (4e5, 6e5)],
    ("fuel-tank-empty", "empty"): [replace(HEALTHY, fuel_over_strainer=False)],
    ("regulator-stuck-low", "tired-spring"): [
        replace(HEALTHY, set_pressure=HEALTHY.set_pressure * x) for x in (0.7, 0.85)
    ],
    ("regulator-stuck-low", "stuck-open"): [replace(HEALTHY, hangs_open=True)],
    ("regulator-stuck-high", "set-too-high"): [
        replace(HEALTHY, set_pressure=HEALTHY.set_pressure * x) for x in (1.2, 1.5)
    ],
    ("regulator-stuck-high", "screen-blocked"): [replace(HEALTHY, screen=x) for x in (6e13, 2e14)],
    ("regulator-stuck-high", "screen-dirty"): [replace(HEALTHY, screen=x) for x in (1.3e13, 1.8e13)],
    ("regulator-stuck-high", "stuck-shut"): [
        replace(HEALTHY, set_pressure=HEALTHY.set_pressure * x) for x in (2.22, 2.6)
    ],
    ("return-restricted", "narrowed"): [replace(HEALTHY, return_line=HEALTHY.return_line * x) for x in (25, 38)],
    ("return-restricted", "partly"): [replace(HEALTHY, return_line=HEALTHY.return_line * x) for x in (45, 80)],
    ("return-restricted", "blocked"): [replace(HEALTHY, return_line=HEALTHY.return_line * x) for x in (1e4, 1e6)],
    ("regulator-hose-off", "fallen-off"): [replace(HEALTHY, reference=0.0)],
    ("regulator-hose-blocked", "blocked"): [replace(HEALTHY, reference=0.0)],
    ("regulator-hose-split", "split"): [replace(HEALTHY, reference=x) for x in (0.9, 0.5)],
    ("regulator-hose-split", "torn-through"): [replace(HEALTHY, reference=x) for x in (0.1, 0.02)],
    ("regulator-diaphragm-leaking", "cracked"): [replace(HEALTHY, diaphragm_leak=x) for x in (1e-13, 1e-12)],
    ("regulator-diaphragm-leaking", "torn"): [replace(HEALTHY, diaphragm_leak=x) for x in (5e-12, 3e-11)],
    ("regulator-seat-leaking", "leaking"): [replace(HEALTHY, seat_leak=x) for x in (2e-13, 1e-12)],
    ("pump-check-valve-leaking", "leaking"): [replace(HEALTHY, check_valve_leak=x) for x in (2e-13, 1e-12)],
    ("injector-leaking", "dripping"): [replace(HEALTHY, injector_leak=x) for x in (2e-13, 1e-12)],
    ("wrong-pump-fitted", "short-of-flow"): [
        replace(HEALTHY, displacement=HEALTHY.displacement * x) for x in (0.75, 0.5)
    ],
    ("wrong-pump-fitted", "too-small"): [replace(HEALTHY, displacement=HEALTHY.displacement * 0.35, relief=120e3)],
    ("wrong-pump-fitted", "too-large"): [replace(HEALTHY, displacement=HEALTHY.displacement * x) for x in (1.4, 2.2)],
}

# What a steady model of liquid fuel cannot see. Where the hose fell off at the regulator, a gauge on its end still
# shows vacuum. A starved pump that only has to fill a shut rail does so in the end; the prime ends before, and foam gives.
NOT_MODELLED = {
    ("regulator-hose-off", "fallen-off", "vacuum-at-regulator"),
    ("strainer-blocked", "mostly", "rail-pressure-primed"),
    ("strainer-blocked", "mostly", "rail-pressure-return-free"),
}


def answers(reading: str, value: float, healthy: float) -> set[str]:
    """What a value says against the healthy one; a drop that no current or no flow makes may be called none or normal."""
    if reading in ("filter-drop", "pump-supply-drop", "pump-ground-drop"):
        limit = 5 * PSI if reading == "filter-drop" else 0.5
        return {"high"} if value > limit else {"none", "normal"} if value < limit / 100 else {"normal"}
    if reading == "residual-pressure":
        return {"none"} if value < 2 * PSI else {"low"} if value < 20 * PSI else {"normal"}
    if reading == "delivered-volume":
        return {"none"} if value < 5 * ML else {"low"} if value < max(240 * ML, 0.75 * healthy) else {"normal"}
    if reading == "pump-terminal-voltage":
        return {"none"} if value < 1 else {"low"} if value < 11 else {"normal"}
    if reading == "vacuum-at-regulator":
        return {"none"} if value < 0.05 * healthy else {"low"} if value < 0.8 * healthy else {"normal"}
    if abs(value) < 0.03 * abs(healthy) or (
        reading == "rail-pressure-rise" and abs(value) < 0.02 * HEALTHY.set_pressure
    ):
        return {"none", "low"}
    spread = (
        0.1 * healthy if reading == "pump-current-idle" else 1.5 * PSI if reading == "rail-pressure-rise" else 1.8 * PSI
    )
    return {"low"} if value < healthy - spread else {"high"} if value > healthy + spread else {"normal"}


@cache
def book_matrix() -> Matrix:
    return matrix_of_system(load(ROOT), "port-injection-return")


@cache
def confirmations() -> list[tuple[str, str, str, set[str], frozenset[str]]]:
    """(fault, stage, reading, what the model shows, what the record says), one for each severity."""
    rows = {(row.fault, row.stage): row.answers for row in book_matrix().rows}
    found, healthy = [], readings(HEALTHY)
    for (fault, stage), systems in STAGES.items():
        for system in systems:
            for reading, value in readings(system).items():
                said = rows[fault, stage].get(reading)
                if said is not None and (fault, stage, reading) not in NOT_MODELLED:
                    found.append((fault, stage, reading, answers(reading, value, healthy[reading]), said))
    return found


@pytest.mark.parametrize("stage", STAGES, ids="/".join)
def test_the_record_agrees_with_the_model(stage):
    wrong = [
        f"{reading}: the model shows {sorted(shown)}, the record says {sorted(said)}"
        for *row, reading, shown, said in confirmations()
        if tuple(row) == stage and not shown & said
    ]
    assert wrong == []


def test_forty_entries_are_confirmed_and_most_faults_are_in_it():
    confirmed = {(fault, stage, reading) for fault, stage, reading, shown, said in confirmations() if shown & said}
    away = {
        (fault, stage, reading)
        for fault, stage, reading, shown, said in confirmations()
        if shown & said and "normal" not in shown
    }
    assert len(confirmed) >= 250
    assert len(away) >= 80
    assert len({fault for fault, _stage, _reading in away}) >= 15


def test_the_healthy_system_lies_in_the_general_bands():
    shown = readings(HEALTHY)
    assert 36 <= shown["rail-pressure-primed"] / PSI <= 65
    assert 27 <= shown["rail-pressure-idle"] / PSI <= 56
    assert shown["rail-pressure-rise"] == pytest.approx(
        61e3, abs=3e3
    )  # the manifold vacuum, less what the valve's slope takes
    assert shown["filter-drop"] / PSI < 2
    assert 4 <= shown["pump-current-idle"] <= 9
    assert shown["delivered-volume"] > 240 * ML


def test_flow_falls_by_two_thirds_before_idle_pressure_shows_it():
    """Trade knowledge that the model bears out: normal pressure at idle clears almost nothing."""
    weak = replace(HEALTHY, slip=HEALTHY.slip * 3.3)
    share = readings(weak)["delivered-volume"] / readings(HEALTHY)["delivered-volume"]
    assert share < 1 / 3
    assert answers(
        "rail-pressure-idle", readings(weak)["rail-pressure-idle"], readings(HEALTHY)["rail-pressure-idle"]
    ) == {"normal"}
