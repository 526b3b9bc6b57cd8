"""BASIS-3: invented car with a number that does not say so."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Bases of vehicles; maker's bands of jobs in the book itself, not of a shop's own."""
    for path, basis in context.references.bases(record):
        if "invented" not in basis and "calculator" not in basis:
            yield RULE.at(record, f"{field(record, path[:-1])} does not say that it is invented", path=path)
    for reading, band in record.data.get("maker_bands", {}).items() if record.file.startswith("kb/") else ():
        if "invented" not in band:
            yield RULE.at(
                record, f"the maker's band of {reading} does not say that it is invented", path=("maker_bands", reading)
            )


RULE = Rule(
    code="BASIS-3",
    level="error",
    scope="record",
    title="Invented car with a number that does not say so",
    what="Every number of a vehicle, and every maker's figure of a job in the book, says that it is invented.",
    why="The cars of this book are made up; a figure that claims a source would be taken for a maker's real one.",
    mend="Write basis: {invented: true}, and in a job invented: true.",
    example=Example(
        "vehicles/parks-van.yaml",
        "altitude: {value: 120, unit: m, basis: {invented: true}}",
        "altitude: {value: 120, unit: m, basis: {practice: true}}",
    ),
    find=find,
    kinds=("vehicles", "jobs"),
)
