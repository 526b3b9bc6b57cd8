"""JOB-5: instrument that the shop does not have."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import mean
from bayleaf.checks.rule import Example, Rule
from bayleaf.diagnosis.verdicts.instrument import types_of
from bayleaf.finding import Finding
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    """By id or by type."""
    shop = record.data["shop"]
    for i, entry in enumerate(record.data["readings"]):
        used = entry.get("instrument")
        if used in context.book.of("equipment") and not set(shop) & {
            *types_of(context.book, used),
            *context.instruments.of_type.get(used, ()),
        }:
            yield RULE.at(record, f"{used} is not in the shop", mean(used, shop), ("readings", i, "instrument"))


RULE = Rule(
    code="JOB-5",
    level="error",
    scope="record",
    title="Instrument that the shop does not have",
    what="Every instrument that a reading was taken with stands in shop.",
    why="The next test is proposed from what is there; a list that lacks what was just used is wrong.",
    mend="Add the instrument to shop, or correct the reading.",
    example=Example(
        "jobs/parks-van-no-power.yaml",
        "shop: [gauge-0-100, vacuum-gauge, multimeter]",
        "shop: [gauge-0-100, vacuum-gauge]",
    ),
    find=find,
    kinds=("jobs",),
)
