"""BOOK-4: record that nothing leads to."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.facts.reach import reachable
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding


def find(context: Context) -> Iterator[Finding]:
    """Links lead both ways for some: a fault is reached from its part and its symptoms, a procedure from what it takes."""
    reached = reachable(context.references)
    for kind in ("components", "equipment", "readings", "procedures", "faults", "symptoms"):
        for id, record in context.book.of(kind).items():
            if id not in reached and record.sound and record.data.get("status") != "retired":
                yield RULE.at(record, f"no system, symptom or code leads to {id}", path=("title",))


RULE = Rule(
    code="BOOK-4",
    level="warning",
    scope="book",
    title="Record that nothing leads to",
    what=(
        "Every component, reading, procedure, fault, piece of equipment and symptom is reached from a system, a "
        "symptom or a code."
    ),
    why=(
        "The reader starts at what the car does, at what stands in front of him or at a code; what is not linked "
        "from there is not found."
    ),
    mend="Name it where it belongs: in a path, a fault, a symptom, a step, or in a text.",
    example=Example(
        "components/crash-switch.yaml",
        "",
        (
            "# yaml-language-server: $schema=../../schemas/components.schema.json\n"
            "title: Crash switch\n"
            "summary: Cuts the pump in a crash.\n"
            "status: draft\n"
            "does: Opens the pump circuit when it is shaken.\n"
            "found: In the trunk.\n"
            "fails: [Opens in a pothole.]\n"
            "mistaken_for: none\n"
        ),
    ),
    find=find,
    excusable=True,
)
