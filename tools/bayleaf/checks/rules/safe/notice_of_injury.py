"""SAFE-29: a NOTICE that speaks of injury."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

INJURY = re.compile(
    r"\b(injur\w*|hurt\w*|wound\w*|kill\w*|death|dead(?!-)|dies?|fatal\w*|burns? (?:of|on|to|the) (?:the )?(?:skin|hands?|face|eyes?|people)|scald\w*|shock to (?:a|the) person|"
    r"poison\w*|suffocat\w*|blind\w*|skin|eyes?|fingers?|lungs?|hospital|surgeon|doctor|amputat\w*|bleed(?:s|ing)? to death|cancer)\b",
    re.IGNORECASE,
)


def find(record: Record, _context: Context) -> Iterator[Finding]:
    if record.data["signal"] != "NOTICE":
        return
    for field in ("danger", "consequence"):
        hit = INJURY.search(record.data[field])
        if hit:
            message = f"a NOTICE is for damage only, and this one speaks of injury ({hit.group()})"
            yield RULE.at(record, message, "Choose CAUTION, WARNING or DANGER by the severity of the injury.", (field,))


RULE = Rule(
    code="SAFE-29",
    level="error",
    scope="record",
    kinds=("cautions",),
    title="NOTICE that speaks of injury",
    what="NOTICE is for damage to things. What can hurt a person is at least a CAUTION.",
    why="Whoever sees NOTICE thinks of the car and not of the hand.",
    mend="Choose the signal word by the injury.",
    example=Example(
        "vocabulary/cautions.yaml",
        "consequence: The gauge reads wrong from then on.",
        "consequence: The glass may injure the eyes.",
    ),
    find=find,
)
