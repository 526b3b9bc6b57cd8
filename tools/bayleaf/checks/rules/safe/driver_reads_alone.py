"""SAFE-39: a driver is to read an instrument while driving."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.notes import spot, step_name
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.hazards import types_of
from bayleaf.vocabulary import Acts

RECORDS = re.compile(
    r"\b(record\w*|log\w*|captur\w*|stor(?:e|es|ed|ing)|keeps? the (?:lowest|highest))\b", re.IGNORECASE
)


def find(record: Record, context: Context) -> Iterator[Finding]:
    walk = context.procedures.walk(record)
    if "road" not in record.data["where"] or record.data["needs"]["people"] > 1:
        return
    for step in walk.taking:
        instrument = step.data.get("takes", {}).get("instrument")
        if Acts.DRIVE not in step.acts or not isinstance(instrument, str):
            continue
        if not any(_records(context, t) for t in types_of(context.book, instrument)):
            message = f"{step_name(walk, step)} has one person drive on the road and read {instrument}"
            yield RULE.at(
                record,
                message,
                path=("needs", "people") if "people" in record.data["needs"] else spot(record, step, "takes"),
            )


def _records(context: Context, equipment: str) -> bool:
    record = context.book.of("equipment").get(equipment)
    return bool(
        record
        and RECORDS.search(f"{record.title} {record.data.get('summary', '')} {' '.join(record.data.get('setup', []))}")
    )


RULE = Rule(
    code="SAFE-39",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Driver who reads an instrument",
    what="On the road, a reading is taken by a second person or by an instrument that records. The title, summary or set-up of the instrument says that it does.",
    why="A driver who looks at a needle at full load does not look at the road.",
    mend="Write people: 2, use an instrument that records, or a rolling road.",
    example=Example("procedures/drive-at-full-load.yaml", "people: 2}", "people: 1}"),
    find=find,
)
