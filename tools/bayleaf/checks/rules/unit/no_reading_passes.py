"""UNIT-14: instrument whose error leaves no reading that could pass."""

from __future__ import annotations

import math
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.bands import as_written, limits
from bayleaf.checks.messages import either
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every limit on this reading, against every instrument of the type that the step names."""
    for i, step in context.procedures.steps_with(record, "takes"):
        takes = step["takes"]
        there = [
            one
            for one in context.instruments.of(takes.get("instrument", ""), takes.get("reading", ""))
            if one.error(0) is not None
        ]
        for band in context.bands.of(takes.get("reading", ""), record.data["systems"]) if there else ():
            low, high = limits(band)
            if (
                not math.isfinite(high - low)
                or band.record.data[band.path[0]][band.path[1]].get("means", "limit") != "limit"
            ):
                continue
            allowances = [one.allowance((low + high) / 2) for one in there]
            if all(a is not None and 2 * a > high - low for a in allowances):
                message = f"with {either(one.id for one in there)} no reading is clearly inside {as_written(band)} in {band.record.id}"
                yield RULE.at(record, f"step {i + 1}: {message}", path=("steps", i, "takes", "instrument"))


RULE = Rule(
    code="UNIT-14",
    level="advice",
    scope="record",
    title="Instrument whose error leaves no reading that could pass",
    what="The stated error of an instrument leaves room inside the band: some reading is clearly in band.",
    why="Otherwise every reading is too close to call, and the technician learns that only after connecting it.",
    mend="Name a better instrument beside it, or say on the page what the reading can still tell.",
    example=Example("vehicles/parks-van.yaml", "{min: 42.5, max: 48.5", "{min: 43, max: 43.8"),
    find=find,
    kinds=("procedures",),
)
