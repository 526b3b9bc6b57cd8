"""What a code reports, as readings: which stages of which faults fit the report, and which readings part them best."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from bayleaf.diagnosis.belief.belief import TYPED
from bayleaf.diagnosis.faults.matrix import Matrix, Row
from bayleaf.diagnosis.plan.choose import LEAST_BITS, bits_of
from bayleaf.diagnosis.plan.outcomes import Outcomes, table_of
from bayleaf.records import Record, listed

Report = tuple[str, str]  # a reading and the answer that it has when the code sets

SPLITS = 4  # readings that part the causes: more is a plan, which asks for the car
NEAR = 6  # readings of a system that are tried together
DEEP = 3  # readings of a system that are chosen


class Fit(NamedTuple):
    """A stage that may show what a code reports, on a car of one system or of two, and how surely it shows it."""

    row: Row
    systems: tuple[str, ...]
    surely: float  # 1 where it gives no other answer, one half where it may give one more


def reports_of(code: Record) -> list[Report]:
    """The readings that a code stands for; any one of them is enough. What it says in words only is left out."""
    return [(item["reading"], item["shows"]) for item in listed(code.data.get("reports")) if "reading" in item]


def fits_of(matrices: Iterable[Matrix], pairs: Iterable[Matrix], reports: Sequence[Report]) -> list[Fit]:
    """The stages that may show what is reported, system by system.

    A fault of a layer may disturb a reading that only the system under it has, so the pairs of systems add the faults
    that no system shows on its own.
    """
    alone = [fit for matrix in matrices for fit in _fits(matrix, reports)]
    known = {fit.row.fault for fit in alone}
    return alone + [fit for matrix in pairs for fit in _fits(matrix, reports) if fit.row.fault not in known]


def _fits(matrix: Matrix, reports: Sequence[Report]) -> list[Fit]:
    found = []
    for row in matrix.rows:
        said = [row.answers.get(reading, frozenset()) for reading, _shows in reports]
        surely = [1 / len(may) for may, (_reading, shows) in zip(said, reports, strict=True) if shows in may]
        if surely:
            found.append(Fit(row, matrix.car.systems, max(surely)))
    return found


def silent_of(matrices: Iterable[Matrix], reports: Sequence[Report]) -> set[str]:
    """The faults with a stage that says nothing of what is reported, on the systems where another fault shows it."""
    silent: set[str] = set()
    for matrix in matrices:
        if _fits(matrix, reports):
            silent |= {row.fault for row in matrix.rows if all(r not in row.answers for r, _shows in reports)}
    return silent


def by_system(fits: Iterable[Fit]) -> dict[str, list[Fit]]:
    """Each system that shows the report on its own to what it may be there, with what each system beside it adds."""
    fits = list(fits)
    groups: dict[str, dict[tuple[str, str], Fit]] = {fit.systems[0]: {} for fit in fits if len(fit.systems) == 1}
    for fit in fits:
        for system in fit.systems:
            if system in groups:
                groups[system].setdefault((fit.row.fault, fit.row.stage), fit)
    return {system: list(those.values()) for system, those in groups.items()}


def splits_of(
    matrices: Mapping[str, Matrix], fits: Iterable[Fit], readings: Sequence[str], answers: Mapping[str, tuple[str, ...]]
) -> list[str]:
    """The readings that together are expected to tell most about which of the causes it is, the best first.

    The car is not known: each system chooses for itself, and what a reading adds there counts by how likely the report
    is there. `answers` holds those of a question; a number has its own.
    """
    worth: dict[str, float] = {}
    for system, those in by_system(fits).items():
        mass = sum(fit.row.weight * fit.surely for fit in those)
        for reading, bits in _chosen(matrices[system], those, readings, answers):
            worth[reading] = worth.get(reading, 0.0) + bits * mass
    return sorted(worth, key=lambda r: (-worth[r], r))[:SPLITS]


def _chosen(
    matrix: Matrix, fits: list[Fit], readings: Iterable[str], answers: Mapping[str, tuple[str, ...]]
) -> list[tuple[str, float]]:
    """The readings that tell most on one system, one after the other, each with the bits that it adds."""
    rows, mass = list(range(len(fits))), sum(fit.row.weight * fit.surely for fit in fits)
    here = matrix._replace(rows=tuple(fit.row for fit in fits))
    shares = tuple(fit.row.weight * fit.surely / mass for fit in fits)
    tables = {}
    for reading in readings:
        outcomes = Outcomes(answers.get(reading) or tuple(sorted(TYPED)), {})
        if table := table_of(here, reading, outcomes, shares, rows):
            tables[reading] = table
    single = {reading: bits_of(here, shares, rows, [table]) for reading, table in tables.items()}
    near = sorted((r for r in single if single[r] >= LEAST_BITS), key=lambda r: (-single[r], r))[:NEAR]
    chosen: dict[str, float] = {r: single[r] for r in near[:1]}
    while len(chosen) < min(DEEP, len(near)):
        joint = {r: bits_of(here, shares, rows, [tables[c] for c in (*chosen, r)]) for r in near if r not in chosen}
        best = max(joint, key=lambda r: joint[r])
        gain = joint[best] - sum(chosen.values())
        if gain < LEAST_BITS:
            break
        chosen[best] = gain
    return list(chosen.items())
