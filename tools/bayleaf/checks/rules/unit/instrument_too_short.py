"""UNIT-11: instrument whose range does not reach the band."""

from __future__ import annotations

import math
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.bands import as_written, limits
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Every reading that a step takes, against every band that the book has for it on this procedure's systems."""
    for i, step in context.procedures.steps_with(record, "takes"):
        takes = step["takes"]
        there = context.instruments.of(takes.get("instrument", ""), takes.get("reading", ""))
        for band in context.bands.of(takes.get("reading", ""), record.data["systems"]) if there else ():
            ends = [x for x in limits(band) if math.isfinite(x)]
            low, high = band.quantity.plausible
            if not all(low <= x <= high for x in ends):
                continue  # the band itself is wrong: UNIT-3, UNIT-5
            if not any(all(one.reaches(x) for x in ends) for one in there):
                message = f"no {takes['instrument']} reaches {as_written(band)}, the band of {takes['reading']} in {band.record.id}"
                yield RULE.at(record, f"step {i + 1}: {message}", path=("steps", i, "takes", "instrument"))


RULE = Rule(
    code="UNIT-11",
    level="error",
    scope="record",
    title="Instrument whose range does not reach the band",
    what="An instrument that a step names, or one of its type, has a range that holds the whole band of the reading.",
    why="A reading outside the scale is no reading: the needle stands at its stop and looks like a value.",
    mend="Name an instrument whose range holds the band, or correct the range or the band.",
    example=Example("equipment/vacuum-gauge.yaml", "range: {min: 0, max: 30", "range: {min: 0, max: 20"),
    find=find,
    kinds=("procedures",),
)
