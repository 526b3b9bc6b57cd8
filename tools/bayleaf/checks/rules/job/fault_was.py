"""JOB-3: fault that comes and goes without saying when."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Entries with a value or an answer."""
    comes_and_goes = record.data.get("comes_and_goes", False)
    for i, entry in enumerate(record.data["readings"]):
        if "value" not in entry and "answer" not in entry:
            continue
        if comes_and_goes and "fault_was" not in entry:
            yield RULE.at(
                record,
                f"reading {i + 1}, {entry['reading']}, does not say whether the fault was there",
                path=("readings", i),
            )
        elif not comes_and_goes and "fault_was" in entry:
            message = f"reading {i + 1}, {entry['reading']}, says fault_was, and the fault does not come and go"
            yield RULE.at(record, message, path=("readings", i, "fault_was"), key=True)


RULE = Rule(
    code="JOB-3",
    level="error",
    scope="record",
    title="Fault that comes and goes without saying when",
    what="Where the fault comes and goes, every reading says whether it was there at that moment; elsewhere none does.",
    why="A reading taken while the car is well proves that the car was well, and clears nothing.",
    mend="Write fault_was: present or absent beside every value and answer, or take comes_and_goes out.",
    example=Example("jobs/parks-van-no-power.yaml", "invented: true\n", "invented: true\ncomes_and_goes: true\n"),
    find=find,
    kinds=("jobs",),
)
