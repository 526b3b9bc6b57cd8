"""FILE-12: file name that is not an id."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-12",
    title="File name that is not an id",
    what="A record is named by its file: lower-case letters, digits and single hyphens, then .yaml.",
    why="The name is the id, and ids are part of addresses and links for ever.",
    mend="Rename the file.",
    example=Example(
        "components/Battery_2.yaml",
        "",
        (
            "# yaml-language-server: $schema=../../schemas/components.schema.json\n"
            "title: Second battery\n"
            "summary: Feeds the body.\n"
            "status: draft\n"
            "does: Feeds the body.\n"
            "found: In the trunk.\n"
            "fails: [Loses its charge.]\n"
            "mistaken_for: none\n"
        ),
    ),
)
