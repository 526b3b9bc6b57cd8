"""BOOK-6: other name that is the title of another record."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import RECORD_KINDS


def find(context: Context) -> Iterator[Finding]:
    """Records only: the entries of vocabularies share words on purpose."""
    for kind in RECORD_KINDS:
        titles = {r.title.lower(): id for id, r in context.book.of(kind).items()}
        for id, record in context.book.of(kind).items():
            for i, name in enumerate(record.data.get("also_called", []) if record.sound else []):
                if titles.get(name.lower(), id) != id:
                    yield RULE.at(record, f"{name} is the title of {titles[name.lower()]}", path=("also_called", i))


RULE = Rule(
    code="BOOK-6",
    level="warning",
    scope="book",
    title="Other name that is the title of another record",
    what="The other names of a record are not titles of other records of its kind.",
    why="Whoever searches the word is led to the wrong one half of the time.",
    mend="Take the name out, or say in mistaken_for what tells the two apart.",
    example=Example(
        "components/fuel-test-port.yaml",
        "also_called: [service valve]",
        "also_called: [service valve, Fuel rail]",
    ),
    find=find,
    excusable=True,
)
