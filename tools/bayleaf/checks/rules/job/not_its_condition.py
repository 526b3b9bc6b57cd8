"""JOB-6: state that the reading does not ask for."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Entries with not_met."""
    for i, entry in enumerate(record.data["readings"]):
        reading = context.book.of("readings").get(entry.get("reading", ""))
        if reading is None or not reading.sound:
            continue
        asked = reading.data["valid_if"]
        for n, state in enumerate(entry.get("not_met", [])):
            if state not in asked:
                message = f"{entry['reading']} is valid if {either(asked, 'and') or 'nothing else holds'}; {state} is not among them"
                yield RULE.at(record, message, mean(state, asked), ("readings", i, "not_met", n))


RULE = Rule(
    code="JOB-6",
    level="error",
    scope="record",
    title="State that the reading does not ask for",
    what="The field not_met names states that valid_if of the reading names.",
    why="Any other state has no bearing on the reading, so the entry would be taken as valid.",
    mend="Take one of the states of valid_if.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "value: 35, unit: psi, instrument: gauge-0-100}",
        "value: 35, unit: psi, instrument: gauge-0-100, not_met: [engine-cool]}",
    ),
    find=find,
    kinds=("jobs",),
)
