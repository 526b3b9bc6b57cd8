"""FILE-2: hidden character."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-2",
    title="Hidden character",
    what=(
        "A record holds no control characters, no zero-width characters and no marks that turn the direction of "
        "the text, neither typed nor written as an escape."
    ),
    why="They change what a reader sees without showing: a number can be displayed in another order than it is stored.",
    mend="Delete the character; the column says where it stands.",
    example=Example("components/battery.yaml", "title: Battery", 'title: "Batt\\u200bery"'),
)
