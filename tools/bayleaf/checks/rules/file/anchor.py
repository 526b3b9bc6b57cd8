"""FILE-8: anchor, alias, tag or merge key."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-8",
    title="Anchor, alias, tag or merge key",
    what="A record uses no anchors (&), aliases (*), tags (!) or merge keys (<<).",
    why="A number must stand where it is read; with an alias it stands somewhere else, and changes when that does.",
    mend="Write the value out.",
    example=Example("components/battery.yaml", "title: Battery", "title: &name Battery"),
)
