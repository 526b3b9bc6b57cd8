"""UNIT-7: maker's band that does not meet the general band."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.bands import as_written, limits
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Each band of a vehicle or a job against each of its systems."""
    maker = {s.path[-1]: s for s in context.amounts.of(record) if s.role == "band" and s.known}
    for system in context.bands.systems(record):
        for general in context.amounts.of(system):
            own = maker.get(general.path[-1]) if general.role == "band" and general.known else None
            if own is None or "because" in record.data[own.path[0]][own.path[1]]:
                continue
            (low, high), (least, most) = limits(own), limits(general)
            if low > most or high < least:
                message = f"{field(record, own.path)} does not meet the band of {system.id}, {as_written(general)}"
                yield RULE.at(record, message, path=own.path)


RULE = Rule(
    code="UNIT-7",
    level="warning",
    scope="record",
    title="Maker's band that does not meet the general band",
    what="The band of a vehicle meets the band that its system gives for the same reading, or says because.",
    why=(
        "A maker may differ from the rest, but more often one of the two bands holds a slip of the unit or "
        "belongs to another condition."
    ),
    mend="Correct the wrong one, or write because beside the vehicle's band.",
    example=Example("vehicles/parks-van.yaml", "{min: 42.5, max: 48.5, unit: psi", "{min: 72.5, max: 78.5, unit: psi"),
    find=find,
    kinds=("vehicles", "jobs"),
)
