"""LINK-6: replacement without retirement."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """The other way round, a retired record without replacement, may be right and is let pass."""
    if "replaced_by" in record.data and record.data.get("status") != "retired":
        yield RULE.at(record, f"it is replaced by {record.data['replaced_by']} but not retired", path=("replaced_by",))


RULE = Rule(
    code="LINK-6",
    level="error",
    scope="record",
    title="Replacement without retirement",
    what="The field replaced_by stands on a retired record only.",
    why="A record that is in use and has been replaced leaves the reader to choose.",
    mend="Set status to retired, or delete replaced_by.",
    example=Example("components/fuel-test-port.yaml", "status: draft", "status: draft\nreplaced_by: fuel-rail"),
    find=find,
)
