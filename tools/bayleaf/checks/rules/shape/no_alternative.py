"""SHAPE-8: none of the shapes that are allowed."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-8",
    title="None of the shapes that are allowed",
    what="Some fields may be written in one of several shapes, and must be written in one of them.",
    why="Each shape means something of its own, such as limits or an expectation; a mixture means neither.",
    mend="Compare with a record that passes, and write one of the shapes whole.",
    example=Example(
        "readings/rail-pressure-idle.yaml",
        "quantity: rail-pressure\n",
        "quantity: rail-pressure\nanswers: [low, high]\n",
    ),
)
