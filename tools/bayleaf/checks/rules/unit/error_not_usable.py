"""UNIT-22: stated error that cannot be used."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import number
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Errors by counts and by zones; numbers in different units are left to UNIT-1."""
    error, span = record.data.get("error", {}), record.data.get("range")
    if error.get("counts") and "resolution" not in record.data:
        yield RULE.at(record, "the error is given in counts, and there is no resolution", path=("error", "counts"))
    zones = error.get("zones", [])
    if zones and not span:
        yield RULE.at(record, "the error is given by zones, and there is no range", path=("error",))
    if zones and span and {z["unit"] for z in zones} == {span["unit"]}:
        ends = [span["min"], *[x for z in zones for x in (z["min"], z["max"])], span["max"]]
        for i in range(0, len(ends), 2):
            if ends[i] != ends[i + 1]:
                path = ("error", "zones", min(i // 2, len(zones) - 1))
                message = f"the zones do not cover the range: {number(ends[i])} does not meet {number(ends[i + 1])}"
                yield RULE.at(record, message, path=path)


RULE = Rule(
    code="UNIT-22",
    level="error",
    scope="record",
    title="Stated error that cannot be used",
    what=(
        "An error in counts comes with a resolution, an error by zones with a range that the zones cover without "
        "gap or overlap."
    ),
    why="The guard band of a verdict is worked out from it; with a gap there is none.",
    mend="Add the resolution or the range, or make the zones meet.",
    example=Example("equipment/gauge-0-100.yaml", "    - {min: 25, max: 75,", "    - {min: 30, max: 75,"),
    find=find,
    kinds=("equipment",),
)
