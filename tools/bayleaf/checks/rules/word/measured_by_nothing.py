"""WORD-7: measured without instrument or in another condition."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Questions need no instrument."""
    for i, step in context.procedures.steps_with(record, "takes"):
        reading = context.book.of("readings").get(step["takes"].get("reading"))
        if reading is None or not reading.sound:
            continue
        path = ("steps", i, "takes")
        if "computed" in reading.data:
            yield RULE.at(
                record,
                f"step {i + 1} takes {reading.id}, which is computed",
                "Take the readings it is computed from.",
                path,
            )
        elif "quantity" in reading.data and "instrument" not in step["takes"]:
            yield RULE.at(record, f"step {i + 1} takes {reading.id} without an instrument", path=path)
        if step.get("when", reading.data["when"]) != reading.data["when"]:
            message = f"step {i + 1} is done in {step['when']}, and {reading.id} is read in {reading.data['when']}"
            yield RULE.at(record, message, path=("steps", i, "when"))


RULE = Rule(
    code="WORD-7",
    level="error",
    scope="record",
    title="Measured without instrument or in another condition",
    what=(
        "A step that takes a measured reading names its instrument, and its condition is the condition of the "
        "reading. A computed reading is never taken."
    ),
    why="The same pressure is right at idle and wrong when primed; a reading without its condition cannot be judged.",
    mend="Name the instrument, and the reading of the condition in which the step is done.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "takes: {reading: manifold-vacuum-idle, instrument: vacuum-gauge}",
        "takes: {reading: manifold-vacuum-idle}",
    ),
    find=find,
    kinds=("procedures",),
)
