"""SAFE-40: the greatest pressure of a path is far under that of its neighbour."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.records import Record
from bayleaf.safety.paths import pascals

TIMES = 5  # a slipped point is ten times; a sound return line sees what its pump can do when it is blocked


def find(record: Record, _context: Context) -> Iterator[Finding]:
    paths = [
        (i, p, pascals(p.get("greatest"))) for i, p in enumerate(record.data.get("paths", [])) if p["carries"] == "fuel"
    ]
    for i, path, greatest in paths:
        for _n, other, more in paths:
            if path.get("side") == other.get("side") and greatest and more and greatest * TIMES < more:
                message = f"the path {path['name']} has {_shown(path)} as its greatest pressure, and {other['name']}, on the same side, has {_shown(other)}"
                yield RULE.at(record, message, path=("paths", i, "greatest", "value"))
                break


def _shown(path: dict) -> str:
    return f"{path['greatest']['value']:g} {path['greatest']['unit']}"


RULE = Rule(
    code="SAFE-40",
    level="error",
    scope="record",
    kinds=("systems",),
    title="Greatest pressure far under its neighbour's",
    what=(
        "Two fuel paths on one side of a system see pressures of the same order. The greatest credible pressure of one is "
        "not less than a fifth of the other's, or the record says why."
    ),
    why="The greatest pressure decides whether a jet can pierce the skin and which gauge may burst. A slipped point hides both.",
    mend="Write what the path can see when something is blocked or stuck.",
    example=Example(
        "systems/port-injection-return.yaml",
        "greatest: {value: 130, unit: psi, because: A blocked return sees the relief setting,",
        "greatest: {value: 13, unit: psi, because: A blocked return sees the relief setting,",
    ),
    find=find,
)
