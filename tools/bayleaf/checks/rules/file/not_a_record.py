"""FILE-5: not one record."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-5",
    title="Not one record",
    what="A file holds exactly one YAML document, and it is a map of fields.",
    why="An empty file, or a second document behind the first, would be passed over in silence.",
    mend="Fill the file in, delete it, or move the second record into a file of its own.",
    example=Example("components/battery.yaml", "title: Battery", "---\ntitle: Second\n---\ntitle: Battery"),
)
