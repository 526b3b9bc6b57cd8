"""What a reader can reach from where readers start: a system, a symptom, a code."""

from __future__ import annotations

from collections import defaultdict

from bayleaf.checks.facts.references import References

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


def reachable(references: References) -> set[str]:
    """The ids of all records that a chain of links leads to."""
    back: dict[str, list[str]] = defaultdict(list)
    starts: set[str] = set()
    for record in references.book.records():
        if not record.sound:
            continue
        if record.kind in STARTS:
            starts.add(record.id)
        for leaf, ids in references.ids(record):
            for id in ids if leaf.top in _BACKWARD else ():
                target = references.book.get(id)
                if target is not None and leaf.top in _SHOWN_BY.get(target.kind, ()):
                    back[id].append(record.id)
    result = edge = starts
    while edge:
        there = [one for id in edge if (one := references.book.get(id)) is not None]
        edge = set().union(*map(references.names, there), *(back[id] for id in edge & back.keys())) - result
        result = result | edge
    return result
