"""DIAG-28: a code names causes that what it reports rules out, or reports what no fault shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.claims import Claims
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.reported import Report, reports_of
from bayleaf.finding import Finding
from bayleaf.records import Record, listed


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims, reports, where = context.claims, reports_of(record), set(listed(record.data["systems"]))
    readings = context.book.of("readings")
    if not reports or any(r not in readings or not readings[r].sound for r, _shows in reports):
        return
    said = " or ".join(f"{reading} {shows}" for reading, shows in reports)
    if not any(_verdicts(claims, claims.faults, reports, where)):
        if any(True for _ in _verdicts(claims, claims.faults, reports, where)):
            yield RULE.at(record, f"no fault of the book may show {said}", path=("reports",))
        return
    for i, symptom in enumerate(listed(record.data["symptoms"])):
        if _ruled_out(claims, claims.felt.get(symptom, ()), reports, where):
            yield RULE.at(record, f"{said} rules out every fault that is felt as {symptom}", path=("symptoms", i))
    for i, first in enumerate(listed(record.data["first"])):
        if _ruled_out(claims, claims.pointing(first), reports, where) and not _told(claims, first, reports, where):
            yield RULE.at(record, f"{said} rules out every fault that {first} points to", path=("first", i))


def _ruled_out(claims: Claims, faults: Iterable[str], reports: list[Report], where: set[str]) -> bool:
    """Whether some of these faults can occur where the code is set, and none of those may show what it reports."""
    verdict: bool | None = None
    for verdict in _verdicts(claims, faults, reports, where):
        if verdict is not False:
            return False
    return verdict is False


def _told(claims: Claims, first: str, reports: list[Report], where: set[str]) -> bool:
    """Whether a fault that may show the report may show something else than health in this reading, or is silent on it."""
    return any(
        first not in stage or not stage[first] <= claims.healthy(system, first)
        for fault in claims.faults
        for system in claims.systems(fault)
        if (not where or system in where) and first in claims.offered(system)
        for stage in claims.stages(fault, system).values()
        if any(shows in stage.get(reading, ()) for reading, shows in reports)
    )


def _verdicts(claims: Claims, faults: Iterable[str], reports: list[Report], where: set[str]) -> Iterator[bool | None]:
    """For the stages of faults on these systems (none is all), whether each may show a report; None is not said."""
    return (
        None if reading not in stage else shows in stage[reading]
        for fault in faults
        for system in claims.systems(fault)
        if not where or system in where
        for stage in claims.stages(fault, system).values()
        for reading, shows in reports
    )


RULE = Rule(
    code="DIAG-28",
    level="error",
    scope="record",
    kinds=("codes",),
    title="Code whose report rules out its causes",
    what="Some fault may show what a code reports. Of every symptom and first reading that the code names, at least one fault may show it too, or the book does not say.",
    why="Its page would send people to faults that cannot have set it.",
    mend="Correct the reading or the answer in reports, say it in words where no fault shows it, or name another symptom or first reading.",
    excusable=True,
    example=Example("codes/p0171.yaml", "shows: low", "shows: unsteady"),
    find=find,
)
