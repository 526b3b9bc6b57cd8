"""DIAG-25: a stage is felt as its fault is not."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Every stage that says itself how it is felt."""
    whole = mapped(record.data["felt_as"])
    for stage, answers in record.data["stages"].items():
        for symptom in mapped(answers.get("felt")):
            if symptom not in whole:
                message = f"stage {stage} is felt as {symptom}, and the fault is not"
                yield RULE.at(record, message, mean(symptom, whole), ("stages", stage, "felt", symptom), True)


RULE = Rule(
    code="DIAG-25",
    level="error",
    scope="record",
    title="Stage felt as its fault is not",
    what="How a stage is felt is among the symptoms of its fault.",
    why="Lists by symptom are made from the fault. The stage would be missing there.",
    mend="Name the symptom in the felt_as of the fault too, or take it out of the stage.",
    example=Example(
        "faults/pump-ground-poor.yaml",
        "    pump-supply-voltage: low\n",
        "    pump-supply-voltage: low\n    felt: {rough-idle: always}\n",
    ),
    find=find,
    kinds=("faults",),
)
