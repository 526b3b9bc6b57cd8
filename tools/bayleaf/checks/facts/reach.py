"""What a reader can reach from where readers start: a system, a symptom, a code."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bayleaf.checks.context import Context

STARTS = ("systems", "symptoms", "codes")
# Pages of these kinds show what names them, so the link is walked backward too.
_SHOWN_BY = {
    "components": ("part_of", "at", "between", "part"),
    "symptoms": ("felt_as",),
    "readings": ("steps", "computed"),
    "systems": ("systems",),
    "equipment": ("type",),
    "faults": (),
}
_BACKWARD = {field for fields in _SHOWN_BY.values() for field in fields}


def reachable(context: Context) -> set[str]:
    """The ids of all records that a chain of links leads to."""
    back: dict[str, list[str]] = defaultdict(list)
    starts: set[str] = set()
    for record in context.book.records():
        if not record.sound:
            continue
        if record.kind in STARTS:
            starts.add(record.id)
        for leaf, ids in context.ids(record):
            for id in ids if leaf.top in _BACKWARD else ():
                target = context.book.get(id)
                if target is not None and leaf.top in _SHOWN_BY.get(target.kind, ()):
                    back[id].append(record.id)
    found = edge = starts
    while edge:
        records = [record for id in edge if (record := context.book.get(id)) is not None]
        edge = set().union(*map(context.names, records), *(back[id] for id in edge & back.keys())) - found
        found = found | edge
    return found
