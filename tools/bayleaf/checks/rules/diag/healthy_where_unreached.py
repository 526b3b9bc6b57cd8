"""DIAG-17: a fault says other than healthy where nothing that it disturbs reaches."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.spared import Why, disturbed
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.finding import Finding
from bayleaf.records import Record, listed, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    """On the systems that offer the reading; each reading once."""
    claims, readings = context.claims, context.book.of("readings")
    if record.id not in claims.faults:
        return
    result: dict[tuple[str, str], list[str]] = {}
    for system in claims.systems(record.id):
        for stage, answers in claims.own(record.id, system).items():
            for reading, may in answers.items():
                if reading not in claims.offered(system) or not is_diagnosis(readings[reading]):
                    continue
                if not may <= claims.healthy(system, reading) and claims.why(record.id, reading, system) is Why.SPARED:
                    result.setdefault((stage, reading), []).append(system)
    told: set[str] = set()
    for (stage, reading), systems in result.items():
        if reading not in told:
            told.add(reading)
            yield _finding(record, context, stage, reading, systems)


def _finding(record: Record, context: Context, stage: str, reading: str, systems: list[str]) -> Finding:
    observed = listed(context.book.of("readings")[reading].data.get("observes"))
    message = (
        f"{reading} may be other than healthy, and on {either(systems, 'and')} nothing that the fault disturbs "
        f"({either(disturbed(context.book, record), 'and')}) reaches what it observes ({either(observed, 'and')})"
    )
    path = ("stages", stage, reading) if reading in mapped(record.data["stages"].get(stage)) else ("stages", stage)
    return RULE.at(record, message, path=path, key=len(path) == 2)


RULE = Rule(
    code="DIAG-17",
    level="error",
    scope="record",
    title="Changed, and nothing reaches it",
    what="Where a fault says that a reading may be other than healthy, something that the fault disturbs reaches what the reading observes.",
    why="One of the two is wrong. If it is the graph, the missing influence clears other faults that it must not clear.",
    mend="Add the influence where it is true, name what the fault disturbs, or correct the answer.",
    example=Example("faults/pump-ground-poor.yaml", "disturbs: [pump-current-path]", "disturbs: [regulator-reference]"),
    find=find,
    kinds=("faults",),
)
