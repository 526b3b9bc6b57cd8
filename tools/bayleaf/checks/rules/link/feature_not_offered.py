"""LINK-11: feature that no system of it offers."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Vehicles, jobs with a car of their own, and procedures for named systems."""
    needs = {"vehicles": (), "jobs": ("car",), "procedures": ("needs",)}[record.kind]
    holder = record.data.get(needs[0], {}) if needs else record.data
    named = (record.data if record.kind == "procedures" else holder).get("systems", [])
    systems = [s for id in named if (s := context.book.of("systems").get(id)) is not None and s.sound]
    if not systems or len(systems) < len(named):
        return
    offered = {c for s in systems for c in s.data["has"]}
    for i, feature in enumerate(holder.get("has", [])):
        if feature not in offered:
            message = f"{feature} is no optional feature of {either((s.id for s in systems), 'and')}"
            yield RULE.at(record, message, mean(feature, offered), (*needs, "has", i))


RULE = Rule(
    code="LINK-11",
    level="error",
    scope="record",
    title="Feature that no system of it offers",
    what=(
        "What a vehicle has, and what a procedure needs it to have, is among the optional features of one of the "
        "systems."
    ),
    why="A feature that no system offers is never there: the procedure would never be proposed.",
    mend="Add the feature to has of the system, or take it out here.",
    example=Example("vehicles/parks-van.yaml", "has: [fuel-test-port]", "has: [fuel-filter]"),
    find=find,
    kinds=("vehicles", "jobs", "procedures"),
)
