"""JOB-9: expected end without the true cause."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import OUTSIDE, Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """true_cause against expects / left. Nothing left is an honest end where several causes are still there."""
    if "expects" not in record.data:
        return
    repaired = {e["repaired"] for e in record.data["readings"] if "repaired" in e}
    left = record.data["expects"].get("left", [])
    causes = [cause for cause in record.data.get("true_cause", []) if cause not in repaired]
    if OUTSIDE in left and len(left) > 1:
        yield RULE.at(
            record,
            f"{OUTSIDE} is left only when nothing else is",
            f"Leave {OUTSIDE} out, or name nothing beside it.",
            ("expects", "left"),
        )
    if left in ([], [OUTSIDE]) and len(causes) > 1:
        return
    for cause in causes:
        if cause not in left:
            yield RULE.at(record, f"the true cause {cause} is not among what is left", path=("expects", "left"))


RULE = Rule(
    code="JOB-9",
    level="error",
    scope="record",
    title="Expected end without the true cause",
    what=(
        "The faults that a demonstration expects to be left hold the true cause, unless it was repaired in the job. With two or more "
        "causes still there, it may expect none, or outside-this-book: no single fault fits then."
    ),
    why="A replay that clears the true cause would prove that the book is wrong, and count as right.",
    mend="Add the true cause to expects, or correct it.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "expects: {left: [fuel-filter-restricted]}",
        "expects: {left: [pump-ground-poor]}",
    ),
    find=find,
    kinds=("jobs",),
)
