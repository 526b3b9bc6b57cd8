"""FILE-15: file that cannot be read."""

from __future__ import annotations

from bayleaf.checks.rule import Example, reader_rule

RULE = reader_rule(
    code="FILE-15",
    title="File that cannot be read",
    what="Every file under kb is an ordinary file that may be read; a symbolic link is none.",
    why="What cannot be read cannot be checked, and a link may lead out of the book.",
    mend="Put the file itself here, and mend its permissions.",
    example=Example("components/spare.yaml", "", "link:battery.yaml"),
)
