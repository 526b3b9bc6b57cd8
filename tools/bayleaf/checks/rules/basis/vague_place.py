"""BASIS-4: place in a source that leads nowhere."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_NOWHERE = re.compile(
    r"(?:see |in |on |at |the )*(?:there|here|somewhere|everywhere|anywhere|throughout|various(?: places| pages)?|several|unknown|none|n/?a|general"
    r"|source|text|book|standard|document|page|table|section|chapter|online|internet|web|website|to be (?:added|found|checked)|later)",
    re.IGNORECASE,
)


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Words that name no place at all."""
    for path, basis in (
        context.references.bases(record)
        if any(leaf.last == "source" for leaf, _ids in context.references.ids(record))
        else ()
    ):
        place = basis.get("place", "")
        if place and (
            _NOWHERE.fullmatch(place.strip(" .")) or (len(place) < 4 and not any(c.isdigit() for c in place))
        ):
            yield RULE.at(record, f"{place!r} is no place in {basis['source']}", path=(*path, "place"))


RULE = Rule(
    code="BASIS-4",
    level="error",
    scope="record",
    title="Place in a source that leads nowhere",
    what="The place in a source is a table, a section, an equation, a page or an entry that somebody can open.",
    why="A value that cannot be found again cannot be checked.",
    mend="Write the place as the source numbers it, such as table B.8.",
    example=Example("codes/p0171.yaml", "place: entry P0171", "place: see there"),
    find=find,
)
