"""JOB-11: entry of one cylinder, bank or connection where the reading has no such."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Entries with `which`."""
    for i, entry in enumerate(record.data["readings"]):
        reading = context.book.of("readings").get(entry.get("reading"))
        if reading is None or not reading.sound or "which" not in entry:
            continue
        each, which, path = reading.data.get("each", "none"), entry["which"], ("readings", i, "which")
        if each == "none":
            yield RULE.at(
                record,
                f"{reading.id} is one reading of the car",
                "Delete which, or name the reading that is taken of each.",
                path,
            )
        elif isinstance(which, int) == (each == "connection"):
            help = "Write the id of the component." if each == "connection" else "Write a number, 1 for the first."
            yield RULE.at(record, f"{which} is no {each}, and {reading.id} is taken of each {each}", help, path)


RULE = Rule(
    code="JOB-11",
    level="error",
    scope="record",
    title="One of several where there is one",
    what=(
        "Only a reading that is taken of each cylinder, bank or connection says which one: a cylinder or a bank by its number, a "
        "connection by the id of its component."
    ),
    why="A figure that names a cylinder belongs to a test of all cylinders; here it would be judged as that of the whole engine.",
    mend="Delete which, or name the reading that is taken of each.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "{reading: rail-pressure-primed, value: 35,",
        "{reading: rail-pressure-primed, which: 2, value: 35,",
    ),
    find=find,
    kinds=("jobs",),
)
