"""JOB-7: reading that this car does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.car.car import car_of_job, offers
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """By the car that diagnosis sees."""
    car = car_of_job(context.book, record.data)
    if not car.systems or any(not (s := context.book.of("systems").get(id)) or not s.sound for id in car.systems):
        return
    for i, entry in enumerate(record.data["readings"]):
        reading = context.book.of("readings").get(entry.get("reading"))
        if reading and reading.sound and not offers(context.book, context.layout, car, reading.id):
            yield RULE.at(record, f"{reading.id} does not exist on this car", path=("readings", i, "reading"))


RULE = Rule(
    code="JOB-7",
    level="error",
    scope="record",
    title="Reading that this car does not have",
    what=(
        "Every reading of a job exists on its car: its component is on a path of one of its systems, and its "
        "features are there."
    ),
    why="A value from another kind of car would be judged by a band that is not its own.",
    mend="Look at the reading, and at systems and has of the car.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "readings:\n",
        "readings:\n  - {reading: high-side-pressure-idle, cannot: No scan tool.}\n",
    ),
    find=find,
    kinds=("jobs",),
)
