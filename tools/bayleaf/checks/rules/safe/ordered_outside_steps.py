"""SAFE-58: a run of the engine, an opened joint or the like is ordered outside the steps, where nothing is walked."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import either, field
from bayleaf.checks.prose.writing import sentences
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.vocabulary import Acts

FIELDS = frozenset({"results", "setup", "misleads", "next"})
# The orders, each with the acts of which a step must have one. They count at the start of a sentence and after a comma or an `and`.
ORDERS = (
    (
        r"(?:re)?start (?:up )?the (?:engine|car)\b|run the engine\b|let the engine (?:run|idle)\b|let it idle\b",
        (Acts.START_ENGINE,),
    ),
    (r"crank (?:the engine|it|again|once|for|over)\b", (Acts.CRANK, Acts.CRANK_DISABLED, Acts.START_ENGINE)),
    (r"(?:switch|turn) (?:the )?(?:key|ignition) (?:back )?on\b", (Acts.KEY_ON, Acts.START_ENGINE)),
    (r"drive (?:the car|it|on|home|around|off|with)\b", (Acts.DRIVE,)),
    (r"(?:run|command) the (?:fuel )?pump\b|press the switch of the jumper\b", (Acts.ENERGISE_PUMP,)),
    (
        (
            r"(?:open|loosen|undo|unscrew|crack|part|slacken) (?!no\b)(?:(?:the|a|an|each|every|both|its|that|this|fuel|supply|return|feed) )*(?:[\w-]+ )?"
            r"(?:joints?|unions?|fittings?|lines?|pipes?|couplings?|banjo|rail|port)\b"
        ),
        (Acts.OPEN_JOINT,),
    ),
    (r"bleed (?:the|it|air|again|and|off)\b", (Acts.BLEED,)),
)
_ORDER = re.compile(
    r"(?:^|[.,;:?!] (?:and |then |and then )?|\band (?:then )?)(?:"
    + "|".join(f"({words})" for words, _acts in ORDERS)
    + ")",
    re.IGNORECASE,
)
_NOT = re.compile(r"(do not|don't|never)\b", re.IGNORECASE)
_END = re.compile(r"[.,;:]")
_LINK = re.compile(r"\[\[([^\[\]|]*)")


def find(record: Record, context: Context) -> Iterator[Finding]:
    for path, text in context.texts.prose(record):
        if path[0] not in FIELDS or not _ORDER.search(text):
            continue
        linked = [id for id in _LINK.findall(text) if id in context.book.of("procedures")]
        for hit in (hit for s in sentences(text) for hit in _ORDER.finditer(s)):
            which = hit.lastindex or 0  # one of the alternatives, each a group, has matched
            acts, start = ORDERS[which - 1][1], hit.start(which)
            if _NOT.search(hit.string, 0, start):
                continue
            walked = [record.id, *linked] if record.kind == "procedures" else linked
            if not any(
                s.own & set(acts)
                for id in walked
                for s in context.procedures.walk(context.book.of("procedures")[id]).steps
            ):
                order = _END.split(hit.string[start:], maxsplit=1)[0].strip()
                message = f"{field(record, path)} orders {order[:1].lower() + order[1:]!r}, and no step with act: {either(acts)} carries its cautions"
                yield RULE.at(record, message, path=path)


RULE = Rule(
    code="SAFE-58",
    level="error",
    scope="record",
    kinds=("procedures", "equipment"),
    title="Order outside the steps",
    what=(
        "Results, setup, misleads and next order no run of the engine, no key on, no drive, no run of the pump, no opened joint and no bleeding, unless "
        "a step of the same procedure does it too or the text links to a procedure that does."
    ),
    why="Only steps are walked. An order in any other line is done with no caution above it and with nothing made safe before it.",
    mend="Make it a step, link to the procedure that does it, or say what is so instead of what to do.",
    example=Example(
        "procedures/look-into-regulator-hose.yaml",
        "misleads: [A hose that hangs down drains before anybody looks.]",
        'misleads: ["A small crack wets it only at idle. Run the engine, stop it, and look again."]',
    ),
    find=find,
)
