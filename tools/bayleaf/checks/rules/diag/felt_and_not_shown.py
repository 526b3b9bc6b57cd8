"""DIAG-21: a stage that is always felt and that no reading is sure to show."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.spared import felt_in
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    felt = {stage: _always(record, stage) for stage in record.data["stages"]}
    claims = context.claims
    if not any(felt.values()) or record.id not in claims.faults:
        return
    blank: dict[str, list[str]] = {}  # each such stage to the systems on which nothing shows it
    shown = False
    for system in claims.systems(record.id):
        for stage, answers in claims.stages(record.id, system).items():
            if any(claims.sure(system, reading, may) for reading, may in answers.items()):
                shown = True
            elif felt[stage]:
                blank.setdefault(stage, []).append(system)
    if not shown:
        return  # DIAG-1 says so of the whole fault
    for stage, systems in blank.items():
        message = f"stage {stage} is always felt as {either(felt[stage], 'and')}, and on {either(systems, 'and')} no reading is sure to be other than normal"
        yield RULE.at(record, message, path=("stages", stage), key=True)


def _always(record: Record, stage: str) -> list[str]:
    return [symptom for symptom, how in felt_in(record, stage).items() if how == "always"]


RULE = Rule(
    code="DIAG-21",
    level="warning",
    scope="record",
    kinds=("faults",),
    title="Always felt and never shown",
    what="Where a fault is always felt as some symptom, at least one reading is surely other than normal in each of its stages, on each of its systems.",
    why="The driver comes back with the same complaint, and every measurement says that the car is well.",
    mend="Say which reading shows this stage, write the reading that would, or say that it is felt sometimes.",
    excusable=True,
    example=Example(
        "faults/fuel-filter-restricted.yaml",
        "    rail-pressure-idle: [normal, low]\n    injector-pressure-idle: low\n",
        "    rail-pressure-idle: [normal, low]\n    injector-pressure-idle: [normal, low]\n",
    ),
    find=find,
)
