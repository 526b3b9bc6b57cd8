"""WORD-14: results that do not match the readings."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Readings that a followed procedure takes may be named; those computed from what is taken too."""
    taken = {step["takes"]["reading"]: i for i, step in context.procedures.steps_with(record, "takes")}
    followed = {
        r for _i, step in context.procedures.steps_with(record, "follow") for r in _taken_by(context, step["follow"])
    }
    results = record.data["results"]
    unknown = any(context.book.get(id) is None for id in taken)  # then one of them was meant: LINK-1
    for reading in results if not unknown else ():
        held = context.book.of("readings").get(reading)
        if reading not in taken and reading not in followed and held and not (held.sound and "computed" in held.data):
            yield RULE.at(
                record,
                f"results speak of {reading}, which no step takes",
                mean(reading, taken),
                ("results", reading),
                True,
            )
    for reading, i in taken.items():
        held = context.book.of("readings").get(reading)
        if held and held.sound and held.data.get("purpose", "diagnosis") == "diagnosis" and reading not in results:
            yield RULE.at(
                record, f"step {i + 1} takes {reading}, and results do not speak of it", path=("steps", i, "takes")
            )


def _taken_by(context: Context, procedure: str | None) -> list[str]:
    record = context.book.of("procedures").get(procedure or "")
    return [s["takes"]["reading"] for s in record.data["steps"] if "takes" in s] if record and record.sound else []


RULE = Rule(
    code="WORD-14",
    level="error",
    scope="record",
    title="Results that do not match the readings",
    what="A procedure says what the answers mean for each reading that it takes for diagnosis, and for no other.",
    why="A reading without a result leaves the technician with a number; a result without a reading is never reached.",
    mend="Write results for what the steps take, or take the reading.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "results:\n  rail-pressure-idle:",
        "results:\n  fuel-in-regulator-hose:\n    dry: Nothing leaks.\n  rail-pressure-idle:",
    ),
    find=find,
    kinds=("procedures",),
)
