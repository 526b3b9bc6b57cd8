"""SAFE-26: a step defeats emission equipment."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

EQUIPMENT = re.compile(
    r"\b(catalyst|catalytic|converters?|particulate|soot filter|canister|purge|evaporative|recirculation|secondary air|air pump|"
    r"crankcase|ventilation valve|oxygen sensors?|filler restrictor|emission\w*|readiness|monitors?|malfunction lamp)\b",
    re.IGNORECASE,
)
DEFEAT = re.compile(
    r"\b(delet\w*|defeat\w*|gut(?:ted|ting)?|hollow\w*|bypass\w*|dummy|simulat\w*|spacers?|straight pipe|test pipe|drill\w* out|"
    r"knock\w* out|weld\w* shut|blank(?:ed|ing)? off|block(?:ed|ing)? off|plug\w* (?:it )?(?:for good|permanently)|leav\w* (?:it |them )?(?:off|out|unplugged|disconnected)|"
    r"permanent\w*|for good|code out|tune out|remap\w*|disable the)\b",
    re.IGNORECASE,
)
NOT = re.compile(r"\b(do not|don't|never|not to|must not|without)\b", re.IGNORECASE)


def find(record: Record, context: Context) -> Iterator[Finding]:
    for i, step in context.procedures.steps_with(record, "do"):
        text = step["do"]
        hit = DEFEAT.search(text)
        if hit is None or NOT.search(text):
            continue
        part = context.book.of("components").get(step.get("at", ""))
        if EQUIPMENT.search(f"{text} {part.title if part else ''}"):
            yield RULE.at(record, f"step {i + 1} defeats emission equipment ({hit.group()})", path=("steps", i, "do"))
    for i, text in enumerate(record.data["needs"]["consumables"]):
        if DEFEAT.search(text) and EQUIPMENT.search(text):
            yield RULE.at(
                record, f"the consumable {text!r} defeats emission equipment", path=("needs", "consumables", i)
            )


RULE = Rule(
    code="SAFE-26",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Emission equipment defeated",
    what=(
        "No step removes, blocks, hollows out, bypasses or simulates emission equipment for good. Taking it off to measure, and putting "
        "it back, is allowed, and SAFE-6 sees that it is put back."
    ),
    why="Defeating it is against the law in most places (in the United States, Clean Air Act section 203(a)(3)), and it hides the fault.",
    mend="Measure it, mend it or replace it; say how it is put back.",
    example=Example(
        "procedures/recognise-the-rail.yaml",
        "  - {do: Count the fuel lines that end at the rail.,",
        "  - {do: Fit a test pipe in place of the converter.}\n  - {do: Count the fuel lines that end at the rail.,",
    ),
    find=find,
)
