"""SAFE-64: an act lasts less or more than it may."""

from __future__ import annotations

from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import to_si, units
from bayleaf.records import Record


def find(record: Record, context: Context) -> Iterator[Finding]:
    acts = context.book.of("acts")
    for i, step in context.procedures.steps_with(record, "lasts"):
        act, lasts = acts.get(step.get("act", "")), step["lasts"]
        limit = act.data.get("lasts") if act is not None and act.sound else None
        if act is None or limit is None or lasts["unit"] not in units() or limit["unit"] not in units():
            continue
        seconds = to_si(lasts["value"], lasts["unit"], "none")
        least, most = (to_si(limit[end], limit["unit"], "none") for end in ("least", "most"))
        if units()[lasts["unit"]].dimension == units()[limit["unit"]].dimension and not least <= seconds <= most:
            words = (
                f"step {i + 1} is to {context.procedures.machine.title(act.id)} for {lasts['value']:g} {lasts['unit']}, "
                f"and that act lasts {limit['least']:g} to {limit['most']:g} {limit['unit']}"
            )
            yield RULE.at(record, words, path=("steps", i, "lasts", "value"))


RULE = Rule(
    code="SAFE-64",
    level="error",
    scope="record",
    kinds=("procedures",),
    title="Act too short or too long",
    what="A step lasts at least as long as its act must to do anything, and at most as long as it may without harm; the vocabulary says both for an act.",
    why="A blink of the starter relieves nothing, and a starter held for a minute burns.",
    mend="State a time between the two, and repeat the step after a pause where it takes longer.",
    example=Example(
        "procedures/take-gauge-off.yaml",
        "  - {do: Switch the key on., act: key-on}\n",
        "  - {do: Crank the engine., act: crank, lasts: {value: 0.2, unit: s, basis: {practice: true}}}\n",
    ),
    find=find,
)
