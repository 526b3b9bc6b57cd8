"""FILE-12: file name that is not an id."""

from __future__ import annotations

from bayleaf.checks.rule import Example, Rule

RULE = Rule(
    code="FILE-12",
    level="error",
    scope="file",
    title="File name that is not an id",
    what="A record is named by its file: lower-case letters, digits and single hyphens, then .yaml.",
    why="The name is the id, and ids are part of addresses and links for ever.",
    mend="Rename the file.",
    example=Example(
        "components/Battery_2.yaml",
        "",
        "# yaml-language-server: $schema=../../schemas/components.schema.json\ntitle: Second battery\nsummary: Feeds the body.\nstatus: draft\ndoes: Feeds the body.\nfound: In the trunk.\nfails: [Loses its charge.]\nmistaken_for: none\n",
    ),
)
