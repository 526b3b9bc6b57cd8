"""LINK-12: two systems of one family in one car."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Vehicles, and jobs with a car of their own."""
    path = ("systems",) if record.kind == "vehicles" else ("car", "systems")
    seen: dict[str, str] = {}
    for i, id in enumerate(
        (record.data if record.kind == "vehicles" else record.data.get("car", {})).get("systems", [])
    ):
        system = context.book.of("systems").get(id)
        family = system.data.get("family", "") if system and system.sound else ""
        if family and family != "layer" and family in seen:
            yield RULE.at(record, f"{seen[family]} and {id} are both of the family {family}", path=(*path, i))
        seen.setdefault(family, id)


RULE = Rule(
    code="LINK-12",
    level="error",
    scope="record",
    title="Two systems of one family in one car",
    what="A car has at most one system of each family; only layers lie over others, each over a family that it adds to.",
    why="With two fuel systems nobody knows whose band rules.",
    mend="Take one of the two out.",
    example=Example(
        "vehicles/parks-van.yaml",
        "systems: [port-injection-return]",
        "systems: [port-injection-return, direct-injection]",
    ),
    find=find,
    kinds=("vehicles", "jobs"),
)
