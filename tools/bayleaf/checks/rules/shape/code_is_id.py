"""SHAPE-14: code that differs from its id."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Codes only."""
    if record.data["code"].lower() != record.id:
        yield RULE.at(record, f"the code {record.data['code']} stands in the record {record.id}", path=("code",))


RULE = Rule(
    code="SHAPE-14",
    level="error",
    scope="record",
    title="Code that differs from its id",
    what="The id of a trouble code is the code in small letters.",
    why="It is found by typing the code.",
    mend="Rename the file, or correct the code.",
    example=Example("codes/p0171.yaml", "code: P0171", "code: P0174"),
    find=find,
    kinds=("codes",),
)
