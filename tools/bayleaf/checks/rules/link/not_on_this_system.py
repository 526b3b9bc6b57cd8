"""LINK-13: reading at a part that the system does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Bands and the answers that recognise the system."""
    for name in ("bands",):
        for id in record.data.get(name, {}):
            reading = context.book.of("readings").get(id)
            places = (
                [reading.data["at"]]
                if reading and "at" in reading.data
                else reading.data.get("between", [])
                if reading
                else []
            )
            for place in places:
                on = context.layout.paths(place)
                if on and all(system != record.id for system, _path in on):
                    message = f"{id} is taken at {place}, which lies on no path of this system"
                    yield RULE.at(record, message, path=(name, id), key=True)


RULE = Rule(
    code="LINK-13",
    level="error",
    scope="record",
    title="Reading at a part that the system does not have",
    what=(
        "A system shows and limits only readings that are taken at parts on its paths, or at parts that lie on no"
        " path of any system."
    ),
    why="A band of another system's reading is never used, and the reading that was meant has none.",
    mend="Take the reading out, or put its component on a path.",
    example=Example(
        "systems/direct-injection.yaml",
        "bands:\n",
        "bands:\n  rail-pressure-primed: {min: 36, max: 65, unit: psi, means: spread, basis: {practice: true}}\n",
    ),
    find=find,
    kinds=("systems",),
)
