"""BASIS-4: place in a source that leads nowhere."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.bases import bases_of
from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record


def check(record: Record, context: Context) -> Iterator[Finding]:
    """A place holds a number, or names a part that is there once."""
    for path, basis in bases_of(record.data):
        place = basis.get("place", "")
        if place and not _PLACE.search(place):
            yield RULE.at(record, f"{place!r} is no place in {basis['source']}", path=(*path, "place"))

_PLACE = re.compile(r"\d|\b[A-Z]\b|\b(?:abstract|definition|definitions|preface|glossary|introduction|scope|title page|annex|appendix|index)\b", re.I)


RULE = Rule(
    code="BASIS-4",
    level="error",
    scope="record",
    title="Place in a source that leads nowhere",
    what="The place in a source is a table, a section, an equation, a page or an entry that somebody can open.",
    why="A value that cannot be found again cannot be checked.",
    mend="Write the place as the source numbers it, such as table B.8.",
    example=Example("codes/p0171.yaml", "place: entry P0171", "place: see there"),
    check=check,
)
