"""DIAG-10: a first reading of a symptom or a code says nothing about its causes."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.stages import is_diagnosis
from bayleaf.finding import Finding
from bayleaf.records import Record, listed

NAMED = 3  # how many readings are proposed


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims = context.claims
    felt = {record.id} if record.kind == "symptoms" else set(listed(record.data["symptoms"]))
    causes = {fault for symptom in felt for fault in claims.felt.get(symptom, ())}
    for i, id in enumerate(listed(record.data["first"])):
        reading = context.book.of("readings").get(id)
        if reading is None or not reading.sound or not is_diagnosis(reading) or not causes:
            continue
        if causes.isdisjoint(claims.pointing(id)):
            message = f"{id} is surely other than healthy in none of the {len(causes)} faults that are felt so"
            better = [
                r for r, faults in claims.pointing_by.items() if faults & causes and r not in record.data["first"]
            ]
            help = f"{either(better[:NAMED])} would be; or say in the faults that they are felt so." if better else ""
            yield RULE.at(record, message, help, ("first", i))


RULE = Rule(
    code="DIAG-10",
    level="warning",
    scope="record",
    kinds=("symptoms", "codes"),
    title="First reading that says nothing of the causes",
    what="A first reading of a symptom, or of a code with symptoms, is surely other than healthy in at least one of the faults that are felt so.",
    why="It would be taken on every such car and point to none of its causes.",
    mend="Name a reading that one of the causes changes, or say in the faults that they are felt so.",
    excusable=True,
    example=Example("symptoms/rough-idle.yaml", "first: [fuel-in-regulator-hose]", "first: [high-side-pressure-idle]"),
    find=find,
)
