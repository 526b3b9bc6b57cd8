"""SAFE-36: a standing caution that no preparation shows."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.safety.preparations import cautions_of


def find(context: Context) -> Iterator[Finding]:
    procedures = context.book.of("procedures")
    standing = [id for id, r in procedures.items() if r.sound and r.data.get("standing")]
    shown = cautions_of(context.book, standing)
    for id, record in context.book.of("cautions").items():
        if record.sound and record.data.get("standing") and record.data.get("status") != "retired" and id not in shown:
            yield RULE.at(record, f"the standing caution {id} is in no standing preparation", path=("standing",))
    for id in standing:
        if not cautions_of(context.book, [id]):
            yield RULE.at(
                procedures[id], f"the preparation {id} shows no caution", "Name its cautions in its steps.", ("steps",)
            )


RULE = Rule(
    code="SAFE-36",
    level="error",
    scope="book",
    title="Standing caution that nobody shows",
    what="A caution marked `standing` is named in a step of a standing preparation, and every preparation shows at least one caution.",
    why="Procedures rely on their preparations for what always holds; a caution that fell out of all of them is on no page.",
    mend="Name the caution in a step of the preparation that it belongs to.",
    example=Example(
        "procedures/running-engine-preparation.yaml",
        "cautions: [running-engine, hot-parts]",
        "cautions: [running-engine]",
    ),
    find=find,
)
