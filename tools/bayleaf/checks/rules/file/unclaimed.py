"""FILE-11: file that no schema claims."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-11",
    title="File that no schema claims",
    what="Every file under kb lies in kb/<kind>/<id>.yaml or is one of the lists in kb/vocabulary.",
    why="A file in another place would be checked by nobody and shown nowhere.",
    mend="Move it into the folder of its kind, or delete it.",
    example=Example("notes/battery.yaml", "", "title: Battery\n"),
)
