"""FILE-7: field written twice."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-7",
    title="Field written twice",
    what="A field stands once in its map.",
    why="Programs keep the last of the two and people read the first.",
    mend="Keep one of the two.",
    example=Example("components/battery.yaml", "status: draft", "status: draft\nstatus: reviewed"),
)
