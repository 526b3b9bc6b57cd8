"""DIAG-23: a stage speaks of a reading that cannot be taken on a car with it."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.faults.spared import felt_in, holds_in, prevented
from bayleaf.diagnosis.faults.stages import STAGE_FIELDS
from bayleaf.finding import Finding
from bayleaf.records import Record, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    """What a stage says itself; what it takes over from another is left out in silence."""
    stages, differs = mapped(record.data["stages"]), mapped(record.data.get("differs"))
    for stage in stages:
        gone = prevented(context.book, record, stage)
        said: list[tuple[tuple[str, ...], dict]] = [(("stages", stage), stages[stage])]
        said += [(("differs", s, stage), mapped(by.get(stage))) for s, by in differs.items()]
        for path, answers in said if gone else ():
            for reading in answers:
                other = context.book.of("readings").get(reading) if reading not in STAGE_FIELDS else None
                if other is not None and not gone.isdisjoint(holds_in(context.book, other)):
                    felt = [s for s, how in felt_in(record, stage).items() if how == "always"]
                    message = f"{reading} cannot be taken: stage {stage} is always felt as {either(felt, 'and')}"
                    yield RULE.at(record, message, path=(*path, reading), key=True)


RULE = Rule(
    code="DIAG-23",
    level="error",
    scope="record",
    title="Reading that cannot be taken",
    what="A stage that is always felt as a symptom does not speak of readings that this symptom prevents: a car that does not run has no idle pressure.",
    why="Such an answer is never given. None is what a gauge shows, not what nobody could read.",
    mend="Take the answer out. If the car does run with it, say in the stage how it is felt.",
    example=Example("symptoms/loss-of-power.yaml", "prevents: none", "prevents: [running]"),
    find=find,
    kinds=("faults",),
)
