"""WORD-5: vague words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_VAGUE = re.compile(
    r"\b(?:(?:as|if|when|where) (?:necessary|required|needed|applicable|appropriate)|properly|adequate(?:ly)?|appropriate(?:ly)?|suitabl[ey]"
    r"|sufficient(?:ly)?|approximately|approx\.|reasonabl[ey]|carefully|and so on|and/or|etc)(?!\w)",
    re.IGNORECASE,
)


# One of these stands in whatever the pattern matches.
_STEMS = (
    *("necessary", "required", "needed", "applicable", "appropriate", "properly", "adequate", "suitabl", "sufficient"),
    *("approx", "reasonabl", "carefully", "and so on", "and/or", "etc"),
)


def find(record: Record, context: Context) -> Iterator[Finding]:
    """One finding a text: the first vague word in it."""
    for path, text in context.texts.prose(record) if context.texts.may_say(record, _STEMS) else ():
        match = _VAGUE.search(text)
        if match and not (match[0].lower().startswith("approx") and "±" in text):
            yield RULE.at(record, f"{field(record, path)} says {match[0]}", path=path)


RULE = Rule(
    code="WORD-5",
    level="warning",
    scope="record",
    title="Vague words",
    what=(
        "Texts say how much, when and with what, instead of as necessary, if required, properly, adequate, "
        "appropriate, suitable, etc. or and/or; approximately comes with a ±."
    ),
    why="A vague word leaves the decision to the reader who came to the book because he did not know.",
    mend="Say what is meant, or leave the word out.",
    example=Example(
        "components/fuel-filter.yaml",
        "fails: [Blocks slowly with dirt.]",
        "fails: [Blocks slowly unless it is properly cared for.]",
    ),
    find=find,
    excusable=True,
)
