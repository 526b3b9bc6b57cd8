"""SHAPE-6: too short, too long, or the same thing twice."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-6",
    title="Too short, too long, or the same thing twice",
    what="Texts and lists keep to their greatest and smallest size, and a list names each thing once.",
    why=(
        "A list without entries is a list that somebody forgot; a text beyond its limit does not fit its place on"
        " a page."
    ),
    mend="Shorten the text, write none for an empty list, or delete the entry that stands twice.",
    example=Example(
        "codes/p0171.yaml",
        "first: [rail-pressure-idle, rail-pressure-primed, manifold-vacuum-idle]",
        "first: [rail-pressure-idle]",
    ),
)
