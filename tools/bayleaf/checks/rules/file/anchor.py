"""FILE-8: anchor, alias, tag or merge key."""

from __future__ import annotations

from bayleaf.checks.rule import Example, Rule

RULE = Rule(
    code="FILE-8",
    level="error",
    scope="file",
    title="Anchor, alias, tag or merge key",
    what="A record uses no anchors (&), aliases (*), tags (!) or merge keys (<<).",
    why="A number must stand where it is read; with an alias it stands somewhere else, and changes when that does.",
    mend="Write the value out.",
    example=Example("components/battery.yaml", "title: Battery", "title: &name Battery"),
)
