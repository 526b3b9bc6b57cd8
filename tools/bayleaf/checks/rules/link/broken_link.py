"""LINK-4: link in text that is not closed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.records.named import PROSE

_WHOLE = re.compile(r"\[\[[a-z0-9][a-z0-9-]*(?:\|[A-Za-z0-9][^\[\]|\n]*)?\]\]")


def find(record: Record, context: Context) -> Iterator[Finding]:
    """What is left of the brackets once whole links are taken out."""
    for path, text in context.texts.prose(record) if _may(context.texts.all_prose(record)) else ():
        if "[[" not in text and "]]" not in text:
            continue
        rest = PROSE.sub("", text)
        if "[[" in rest or "]]" in rest:
            yield RULE.at(record, f"{field(record, path)} holds a link that is not closed", path=path)
        elif any(not m[1].strip() or (m[2] is not None and not m[2].strip()) for m in PROSE.finditer(text)):
            yield RULE.at(record, f"{field(record, path)} holds a link without an id or without words", path=path)


def _may(text: str) -> bool:
    """A first look: whether not every double bracket belongs to a link with an id and words."""
    signs = text.count("[[") + text.count("]]")
    return bool(signs) and signs != 2 * len(_WHOLE.findall(text))


RULE = Rule(
    code="LINK-4",
    level="error",
    scope="record",
    title="Link in text that is not closed",
    what="A link in text is written [[id]] or [[id|words]], and no other square brackets stand in it.",
    why="Anything else is shown as it stands, and the reader sees brackets instead of a link.",
    mend="Write [[id]] or [[id|words]], or put the words without brackets.",
    example=Example(
        "procedures/measure-primed-pressure.yaml",
        "Go on to [[measure-pump-voltage]].",
        "Go on to [[measure-pump-voltage].",
    ),
    find=find,
)
