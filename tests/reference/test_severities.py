"""No severity of a fault may fall between the stages of its record.

The outside is the textbook physics of port_model. Each fault is swept there from too slight to be seen to extreme; at
every severity that shows anything, one stage of the record must allow everything that the model shows. Else a reading
that is really normal, or really out, would clear the fault that causes it. A steady model shows no foam, no pulsing
and no prime that ends too early; where a record speaks of these, it allows more than the model shows.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from tests.reference.port_model import Port, readings
from tests.reference.test_physics import HEALTHY, PSI, answers, book_matrix

# fault, what of the model changes, its values from slight to extreme
SWEEPS: list[tuple[str, str, np.ndarray]] = [
    ("fuel-filter-restricted", "filter", HEALTHY.filter * np.geomspace(1.5, 2000, 60)),
    ("pump-weak", "slip", HEALTHY.slip * np.geomspace(1.1, 12, 60)),
    ("pump-weak", "winding_ohm", HEALTHY.winding_ohm * np.geomspace(1.1, 8, 60)),
    ("pump-weak", "friction", HEALTHY.friction * np.geomspace(1.05, 3.5, 60)),
    ("pump-weak", "hydraulic_efficiency", HEALTHY.hydraulic_efficiency * np.linspace(0.98, 0.2, 60)),
    ("pump-feed-resistance", "feed_ohm", np.geomspace(0.05, 50, 80)),
    ("pump-ground-resistance", "ground_ohm", np.geomspace(0.05, 50, 80)),
    ("strainer-blocked", "strainer", HEALTHY.strainer * np.geomspace(2, 1e6, 120)),
    ("regulator-stuck-low", "set_pressure", HEALTHY.set_pressure * np.linspace(0.99, 0.1, 60)),
    ("regulator-stuck-high", "set_pressure", HEALTHY.set_pressure * np.linspace(1.01, 2.6, 60)),
    ("regulator-stuck-high", "screen", np.geomspace(1e12, 1e17, 60)),
    ("return-restricted", "return_line", HEALTHY.return_line * np.geomspace(2, 1e7, 60)),
    ("regulator-hose-split", "reference", np.linspace(1, 0, 60)),
    ("regulator-diaphragm-leaking", "diaphragm_leak", np.geomspace(1e-15, 3e-11, 60)),
    ("regulator-seat-leaking", "seat_leak", np.geomspace(1e-15, 1e-11, 40)),
    ("pump-check-valve-leaking", "check_valve_leak", np.geomspace(1e-15, 1e-11, 40)),
    ("injector-leaking", "injector_leak", np.geomspace(1e-15, 1e-11, 40)),
    ("wrong-pump-fitted", "displacement", HEALTHY.displacement * np.linspace(1.05, 3, 60)),
    ("wrong-pump-fitted", "displacement", HEALTHY.displacement * np.linspace(0.97, 0.1, 60)),
    ("wrong-pump-fitted", "relief", np.linspace(640e3, 60e3, 60)),
]
NAMES = [f"{fault}, {field} from {values[0]:.2g} to {values[-1]:.2g}" for fault, field, values in SWEEPS]


@cache
def shown_by(port: Port) -> dict[str, set[str]]:
    """What each reading shows on this system."""
    healthy = readings(HEALTHY)
    return {reading: answers(reading, value, healthy[reading]) for reading, value in readings(port).items()}


def against(fault: str, port: Port) -> dict[str, dict[str, set[str]]]:
    """For each stage of a fault, the readings that the model shows otherwise than the record, with what it shows."""
    found = shown_by(port)
    return {
        row.stage: {r: shown for r, shown in found.items() if row.answers.get(r) and not shown & row.answers[r]}
        for row in book_matrix().rows
        if row.fault == fault
    }


def seen(port: Port) -> bool:
    """Whether a reading leaves what is normal; the current alone is not enough, for its band holds healthy and sick alike."""
    return any("normal" not in shown for reading, shown in shown_by(port).items() if reading != "pump-current-idle")


def severities(fault: str, field: str, values: np.ndarray) -> Iterator[tuple[float, dict[str, dict[str, set[str]]]]]:
    """(value, what stands against each stage) of every severity that shows anything."""
    for value in values:
        port = replace(HEALTHY, **{field: float(value)})
        if seen(port):
            yield float(value), against(fault, port)


def gaps(fault: str, field: str, values: np.ndarray) -> Iterator[str]:
    """One line for each range of a severity in which no stage of the fault fits."""
    last = ""
    for value, stages in severities(fault, field, values):
        nearest = min(stages, key=lambda stage, by=stages: len(by[stage]))
        words = ", ".join(f"{r} {' or '.join(sorted(shown))}" for r, shown in sorted(stages[nearest].items()))
        if words and words != last:
            yield f"{fault}: {field} from {value:.3g}: nearest is {nearest}, but {words}"
        last = words


@pytest.mark.parametrize("sweep", SWEEPS, ids=NAMES)
def test_at_every_severity_one_stage_allows_all_that_the_model_shows(sweep):
    assert len(list(severities(*sweep))) > 10
    assert list(gaps(*sweep)) == []


def test_every_stage_of_a_swept_fault_is_met_at_some_severity():
    met = {
        (sweep[0], stage)
        for sweep in SWEEPS
        for _value, by in severities(*sweep)
        for stage, wrong in by.items()
        if not wrong
    }
    swept = {sweep[0] for sweep in SWEEPS}
    assert {(row.fault, row.stage) for row in book_matrix().rows if row.fault in swept} - met == set()


@pytest.mark.parametrize(
    ("fault", "change", "reading", "least"),
    [
        ("fuel-filter-restricted", {"filter": HEALTHY.filter * 20}, "filter-drop", 10 * PSI),
        ("pump-feed-resistance", {"feed_ohm": 0.5}, "pump-supply-drop", 2.5),
        ("pump-ground-resistance", {"ground_ohm": 0.5}, "pump-ground-drop", 2.5),
    ],
)
def test_a_normal_pressure_at_full_load_clears_no_loss_within_the_reserve(fault, change, reading, least):
    port = replace(HEALTHY, **change)
    assert readings(port)[reading] > least  # 10 psi over the filter, 2.5 V on a wire
    assert shown_by(port)["rail-pressure-load"] == {"normal"}
    assert against(fault, port)["within-reserve"] == {}
