"""DIAG-9: first readings that the systems do not have, or that are not taken to find a fault."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, listed


def find(record: Record, context: Context) -> Iterator[Finding]:
    claims, readings, systems = context.claims, context.book.of("readings"), context.book.of("systems")
    where = [s for s in listed(record.data.get("systems")) if s in systems and systems[s].sound]
    for i, id in enumerate(listed(record.data["first"])):
        reading = readings.get(id)
        if reading is None or not reading.sound:
            continue
        if reading.data.get("purpose", "diagnosis") in ("recognition", "safety"):
            message = f"{id} is a reading for {reading.data['purpose']}, which finds no fault"
            yield RULE.at(
                record,
                message,
                "Name a reading for diagnosis, or one from which such a reading is computed.",
                ("first", i),
            )
        elif where and not claims.exists(id, where):
            yield RULE.at(record, f"{id} does not exist on {either(where)}", path=("first", i))


RULE = Rule(
    code="DIAG-9",
    level="error",
    scope="record",
    kinds=("codes", "symptoms"),
    title="First reading that does not help",
    what="The first readings of a code or a symptom find faults, and they exist on the systems that the code names.",
    why="The first readings are what is done on the day when nobody has time to think.",
    mend="Name readings that this system has and that faults change.",
    example=Example("codes/p0171.yaml", "first: [rail-pressure-idle,", "first: [lines-at-rail,"),
    find=find,
)
