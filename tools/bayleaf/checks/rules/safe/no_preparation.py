"""SAFE-23: a procedure without a standing preparation, or that inherits one which is not standing."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.preparations import preparations


def find(record: Record, context: Context) -> Iterator[Finding]:
    procedures = context.book.of("procedures")
    standing = context.procedures.standing
    for i, id in enumerate(record.data["inherits"]):
        if id in procedures and procedures[id].sound and id not in standing:
            message = f"{id} is inherited and is not a standing preparation"
            yield RULE.at(
                record,
                message,
                f"Follow it in a step, or inherit one of {', '.join(standing) or 'the preparations'}.",
                ("inherits", i),
            )
    if record.data.get("standing"):
        return
    own = preparations(context.book, record.data)
    if standing and not set(own) & set(standing):
        yield RULE.at(
            record,
            "this procedure inherits no standing preparation",
            f"Write inherits with one or more of {', '.join(standing)}.",
            ("inherits",),
        )
        return
    for i, step in context.procedures.steps_with(record, "follow"):
        followed = procedures.get(step["follow"])
        if followed is None or not followed.sound:
            continue
        missing = [p for p in followed.data["inherits"] if p not in own and p != record.id]
        if missing:
            message = f"step {i + 1} follows {followed.id}, which inherits {' and '.join(missing)}, and this procedure does not"
            yield RULE.at(record, message, f"Add {', '.join(missing)} to inherits.", ("steps", i, "follow"))


RULE = Rule(
    code="SAFE-23",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Without its preparation",
    what=(
        "Every procedure inherits a standing preparation, and those of the procedures that it follows. Only standing procedures are "
        "inherited; any other is followed in a step."
    ),
    why="The preparations carry the cautions that no single step shows: leaks, flames, waste fuel, vapour, and what to wear.",
    mend="Inherit the preparations for this kind of work.",
    example=Example("procedures/recognise-the-rail.yaml", "inherits: [bay-preparation]", "inherits: none"),
    find=find,
)
