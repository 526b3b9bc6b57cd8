"""SAFE-28: a caution that frightens and tells nobody what to do."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record

EMPTY = re.compile(
    r"(be|stay|remain) (very |extremely |always )?(careful|cautious|alert|aware|safe|mindful)|(take|use|exercise|apply) (great |extreme |due |every |all )?"
    r"(care|caution|precautions?)|(pay|give) attention|(work|act|proceed) (safely|carefully|with care|with caution)|beware|observe (all )?(safety|precautions)|"
    r"follow (all |the )?(usual |normal )?(safety )?(rules|precautions|instructions)|use common sense|mind (the|your)",
    re.IGNORECASE,
)


def find(record: Record, _context: Context) -> Iterator[Finding]:
    for i, text in enumerate(record.data["avoid"]):
        hit = EMPTY.match(text)
        if hit:
            yield RULE.at(record, f"the avoidance says nothing that could be done: {hit.group()}", path=("avoid", i))
    said = [re.sub(r"[^a-z0-9 ]", "", record.data[f].lower()).strip() for f in ("danger", "consequence")]
    if said[0] == said[1]:
        yield RULE.at(
            record,
            "danger and consequence say the same",
            "Say what is there in danger, and what it does in consequence.",
            ("consequence",),
        )


RULE = Rule(
    code="SAFE-28",
    level="error",
    scope="record",
    kinds=("cautions",),
    title="Caution that tells nobody what to do",
    what=(
        "A caution names the danger, then what happens to whoever ignores it, and then at least one thing that can be done about it. "
        "To be careful is none. That each avoidance begins with a verb is seen to by WORD-1."
    ),
    why="A warning that only frightens leaves the reader as unsafe as before.",
    mend="Say what hands, eyes or feet do: wear, keep, switch off, stand aside.",
    example=Example("vocabulary/cautions.yaml", "avoid: [Wear gloves.]", "avoid: [Take care near hot parts.]"),
    find=find,
)
