"""SHAPE-5: value with the wrong spelling."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="SHAPE-5",
    title="Value with the wrong spelling",
    what="Ids, names, titles and codes keep to the letters that they may have.",
    why="They become addresses, headings and names of inputs; other characters break those or hide in them.",
    mend="Use the letters that the help names.",
    example=Example("components/fuel-filter.yaml", "title: Fuel filter", "title: Fuel <filter>"),
)
