"""UNIT-12: number with a unit in the words of a step."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from bayleaf.checks.context import Context
from bayleaf.checks.prose.writing import plain, steps_of
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import units
from bayleaf.records import Record


def find(record: Record, _context: Context) -> Iterator[Finding]:
    """Looks for a number before any unit that the book knows."""
    for path, text in steps_of(record):
        match = _number_with_unit().search(plain(text))
        if match:
            yield RULE.at(record, f"step {path[1] + 1} names {match[0]} in its words", path=path)


@cache
def _number_with_unit() -> re.Pattern[str]:
    symbols = sorted((s for s in units() if s != "1"), key=len, reverse=True)
    spelled = "|".join(
        map(
            re.escape,
            [
                *symbols,
                "°C",
                "°F",
                "percent",
                "seconds?",
                "minutes?",
                "hours?",
                "volts?",
                "ohms?",
                "litres?",
                "liters?",
            ],
        )
    )
    return re.compile(rf"(?<![\w.])\d+(?:\.\d+)? ?(?:{spelled})(?![\w/])")


RULE = Rule(
    code="UNIT-12",
    level="error",
    scope="record",
    title="Number with a unit in the words of a step",
    what="A quantity of a step is a field: lasts, stop_at or at_most with its unit and its basis. The words name none.",
    why="A number in words is converted by nobody, limited by nobody and rests on nothing.",
    mend="Take it out of the words and write lasts, stop_at or at_most.",
    example=Example(
        "procedures/measure-idle-pressure.yaml",
        "do: Start the engine and wait until it is hot.",
        "do: Start the engine and wait for 10 min.",
    ),
    find=find,
    kinds=("procedures",),
)
