"""FILE-13: id used twice."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-13",
    title="Id used twice",
    what="An id is used once in the whole book, over all kinds and vocabularies.",
    why="A link names an id and nothing else; with two of them it would lead to one by chance.",
    mend="Choose another id for the newer of the two.",
    example=Example(
        "symptoms/battery.yaml",
        "",
        (
            "# yaml-language-server: $schema=../../schemas/symptoms.schema.json\n"
            "title: Battery flat\n"
            "summary: Nothing happens when the key is turned.\n"
            "status: draft\n"
            "ask: [Do the lamps light?]\n"
            "first: [pump-supply-voltage]\n"
            "prevents: none\n"
            "explain: The battery of your car is flat.\n"
        ),
    ),
)
