"""DIAG-17: `elsewhere` names a path that runs through the part itself."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record, listed, mapped


def find(record: Record, context: Context) -> Iterator[Finding]:
    named = listed(mapped(record.data.get("elsewhere")).get("normal_on"))
    systems = context.claims.systems(record.id) if named else []
    own = context.layout.named(systems)  # a name that they have not is looked up in the rest of the car
    through = {
        name: system
        for system, name in context.layout.paths(record.data["part"])
        if system in systems or name not in own
    }
    for i, name in enumerate(named):
        if name in through:
            words = f"the path {name} of {through[name]} runs through {record.data['part']}, so it is not elsewhere"
            yield RULE.at(record, words, path=("elsewhere", "normal_on", i))


RULE = Rule(
    code="DIAG-17",
    level="error",
    scope="record",
    kinds=("faults",),
    title="Elsewhere is here",
    what="The field `elsewhere` makes normal the readings of paths that the fault leaves alone. No such path runs through its part.",
    why="One word would declare normal what the fault changes first, and clear it by the very reading that shows it.",
    mend="Name the readings of that path one by one.",
    excusable=True,
    example=Example(
        "faults/pump-ground-poor.yaml",
        "felt_as: {loss-of-power: always}",
        "elsewhere: {normal_on: [pump circuit], because: Nothing else is touched.}\nfelt_as: {loss-of-power: always}",
    ),
    find=find,
)
