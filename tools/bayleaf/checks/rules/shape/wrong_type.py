"""SHAPE-3: wrong type of value."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-3",
    title="Wrong type of value",
    what="A field holds the type of value that its schema asks for: text, a number, true or false, a list or a map.",
    why="A number in quotes is text and is never compared with a limit.",
    mend="Write the type that the message asks for; take a number out of its quotes.",
    example=Example("procedures/measure-primed-pressure.yaml", "hands: 2", 'hands: "2"'),
)
