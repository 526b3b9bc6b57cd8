"""WORD-13: title that is not one."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """The title of every record and entry."""
    title = record.title
    if "\n" in title or title != title.strip() or "  " in title:
        yield RULE.at(record, "the title holds a line break or needless spaces", path=("title",))
    elif title.endswith((".", ",", ";", ":")):
        yield RULE.at(record, f"the title ends with {title[-1]!r}", path=("title",))
    elif len(title) > 5 and title.isupper() and " " in title:
        yield RULE.at(record, "the title is all capitals", path=("title",))
    elif title[0].islower() and record.kind not in ("terms", "fuels"):
        yield RULE.at(record, "the title starts with a small letter", path=("title",))


RULE = Rule(
    code="WORD-13",
    level="warning",
    scope="record",
    title="Title that is not one",
    what="A title is one line in sentence case, is not all capitals and does not end with a full stop.",
    why="Titles stand in lists side by side; one that shouts or stops looks like another thing.",
    mend="Write it as the other titles of its kind are written.",
    example=Example("components/fuel-filter.yaml", "title: Fuel filter", "title: FUEL FILTER."),
    find=find,
    excusable=True,
)
