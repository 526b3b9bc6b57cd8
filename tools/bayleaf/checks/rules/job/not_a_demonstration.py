"""JOB-2: job of a shop with fields of the demonstration."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.job_fields import DEMONSTRATION
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Jobs of an overlay, and job files given on the command line."""
    for name in () if record.file.startswith("kb/") else DEMONSTRATION:
        if name in record.data:
            yield RULE.at(record, f"a real job has no {name}", path=(name,), key=True)


RULE = Rule(
    code="JOB-2",
    level="error",
    scope="record",
    title="Job of a shop with fields of the demonstration",
    what="A technician's own job has neither invented nor true_cause nor expects.",
    why="Nobody knows the cause of a real job beforehand, and a real job that says invented is not believed.",
    mend="Delete the field.",
    example=Example(
        "../shop/kb/jobs/van-of-today.yaml",
        "",
        (
            "# yaml-language-server: $schema=../../schemas/jobs.schema.json\n"
            "title: Van of today\n"
            "summary: Brought in this morning.\n"
            "status: draft\n"
            "vehicle: parks-van\n"
            "shop: none\n"
            "felt: none\n"
            "readings: none\n"
            "true_cause: [fuel-filter-restricted]\n"
        ),
    ),
    find=find,
    kinds=("jobs",),
)
