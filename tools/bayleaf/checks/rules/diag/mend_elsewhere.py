"""DIAG-13: the mend is a procedure for other systems, or one that only prepares."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, listed


def find(record: Record, context: Context) -> Iterator[Finding]:
    systems = context.claims.systems(record.id)
    for i, mend in enumerate(record.data["mended_by"]):
        procedure = context.book.of("procedures").get(mend) if isinstance(mend, str) else None
        if procedure is None or not procedure.sound:
            continue
        theirs = listed(procedure.data["systems"])
        if procedure.data.get("standing"):
            yield RULE.at(record, f"{mend} is a standing preparation and mends nothing", path=("mended_by", i))
        elif theirs and systems and not set(theirs) & set(systems):
            yield RULE.at(
                record,
                f"{mend} is for {either(theirs, 'and')}, and the fault is on {either(systems, 'and')}",
                path=("mended_by", i),
            )


RULE = Rule(
    code="DIAG-13",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Mend for another car",
    what="A procedure in `mended_by` is for one of the systems that the fault can occur on, and it is not a preparation.",
    why="The page would send the reader to a repair that his car does not allow.",
    mend="Name the procedure for this system, or write the mend in words.",
    example=Example(
        "faults/high-pressure-pump-worn.yaml",
        "mended_by: [{words: Replace the pump as the maker shows.}]",
        "mended_by: [look-into-regulator-hose]",
    ),
    find=find,
)
