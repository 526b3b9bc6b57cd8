"""JOB-4: entry that does not fit its reading."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Entries with a value or an answer; cannot and not_reached fit any reading."""
    for i, entry in enumerate(record.data["readings"]):
        reading = context.book.of("readings").get(entry.get("reading"))
        if reading is None or not reading.sound or not ("value" in entry or "answer" in entry):
            continue
        field = "value" if "value" in entry else "answer"
        if "computed" in reading.data:
            yield RULE.at(record, f"{reading.id} is computed and never typed", path=("readings", i, field))
        elif field == "value" and "answers" in reading.data:
            help = f"Its answers are {either(reading.data['answers'], 'and')}."
            yield RULE.at(record, f"{reading.id} is a question and has no value", help, ("readings", i, "value"))
        elif field == "answer" and "quantity" in reading.data and entry["answer"] in ("low", "normal", "high"):
            yield RULE.at(
                record,
                f"{reading.id} is measured; {entry['answer']} is for the verdict to say",
                path=("readings", i, "answer"),
            )


RULE = Rule(
    code="JOB-4",
    level="error",
    scope="record",
    title="Entry that does not fit its reading",
    what=(
        "A measured reading has a value, or the answer none or unsteady; a question has an answer; a computed "
        "reading is never typed."
    ),
    why=(
        "Low and high are said by the verdict, which knows the band; a computed value that is typed hides the "
        "readings it came from."
    ),
    mend="Write the value with its unit and instrument, or the readings that it is computed from.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "{reading: pump-supply-voltage, value: 12.4, unit: V, instrument: multimeter}",
        "{reading: pump-supply-voltage, answer: low}",
    ),
    find=find,
    kinds=("jobs",),
)
