"""SAFE-59: a procedure takes more people than it says."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.preparations import preparations
from bayleaf.vocabulary import States

SECOND = re.compile(r"\b(second person|helper)\b", re.IGNORECASE)


def find(record: Record, context: Context) -> Iterator[Finding]:
    people, procedures = record.data["needs"]["people"], context.book.of("procedures")
    path = ("needs", "people")
    for id in dict.fromkeys(
        [
            *preparations(context.book, record.data),
            *(step["follow"] for _i, step in context.procedures.steps_with(record, "follow")),
        ]
    ):
        other = procedures.get(id)
        if other is not None and other.sound and other.data["needs"]["people"] > people:
            yield RULE.at(
                record,
                f"{id} takes {other.data['needs']['people']} people, and this procedure, which needs it, says {people}",
                path=path,
            )
            return
    if people > 1:
        return
    for i, step in context.procedures.steps_with(record, "do"):
        hit = SECOND.search(step["do"])
        if hit:
            yield RULE.at(record, f"step {i + 1} speaks of {hit.group().lower()!r}, and people is 1", path=path)
            return
    drained = next((s for s in context.procedures.walk(record).steps if s.stands(States.TANK_DRAINED)), None)
    if drained is not None:
        yield RULE.at(
            record,
            f"in step {drained.number} {context.procedures.machine.named(States.TANK_DRAINED)} stands, and people is 1",
            path=path,
        )


RULE = Rule(
    code="SAFE-59",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Fewer people than it takes",
    what=(
        "A procedure says at least as many people as each preparation that it inherits and each procedure that it follows, and two where a step "
        "speaks of a second person or a tank is drained."
    ),
    why="The second person is the hand on the key, the eye on the fire and the one who calls for help; a sheet that says one sends one.",
    mend="Raise people to what the work takes.",
    example=Example("procedures/drive-at-full-load.yaml", "people: 2}", "people: 1}"),
    find=find,
)
