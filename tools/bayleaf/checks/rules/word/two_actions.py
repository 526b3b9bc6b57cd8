"""WORD-4: two actions in one step."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.prose.writing import plain, steps_of, verbs
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

_TOGETHER = re.compile(r"\b(?:while|as|until|at the same time|together|so that)\b", re.IGNORECASE)
_SECOND = re.compile(r"(?:\band then|\band|, then|[.;]) +([A-Za-z]+)\b")
_SIGNS = ("and", ", then", ". ", "; ")  # a first look: without one of these there is no second action
_OBJECT = re.compile(r" +(?:the|a|an|it|its|them|all|both|each|every|no|out|on|off|in|up|down)\b")
_WITH = {
    "let",
    "have",
    "lead",
    "wait",
    "hold",
    "keep",
    "read",
    "note",
    "look",
    "listen",
    "watch",
    "compare",
    "count",
    "write",
    "record",
    "see",
    "leave",
    "never",
    "do",
}


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """A second verb of the list after and, then or a full stop. Looking and reading go with another action."""
    for path, written in steps_of(record):
        text = plain(written)
        if not any(sign in text for sign in _SIGNS):
            continue
        second = next(
            (
                m[1].lower()
                for m in _SECOND.finditer(text)
                if m[1].lower() in verbs() and m[1].lower() not in _WITH and _plain_verb(text, m)
            ),
            "",
        )
        if second and not _TOGETHER.search(text):
            yield RULE.at(record, f"step {path[1] + 1} has a second action: {second}", path=path)


def _plain_verb(text: str, match: re.Match) -> bool:
    """Not a noun that looks like a verb: `and open flame` has no object behind it, `and open the valve` has."""
    return bool(_OBJECT.match(text[match.end() :]))


RULE = Rule(
    code="WORD-4",
    level="warning",
    scope="record",
    title="Two actions in one step",
    what="A step has one action; two only when they are done at the same time, and it says so with while, as or until.",
    why="The second action of a step is the one that is left out, and no caution can stand before it.",
    mend="Make two steps of it.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "do: Stop the engine.",
        "do: Stop the engine and disconnect the gauge.",
    ),
    find=find,
    kinds=("procedures",),
    excusable=True,
)
