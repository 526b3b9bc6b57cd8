"""UNIT-9: conversion by hand that is wrong."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bayleaf.checks.context import Context
from bayleaf.checks.messages import field
from bayleaf.checks.rule import Example, Rule
from bayleaf.finding import Finding
from bayleaf.quantities import from_si, significant, to_si, units
from bayleaf.records import Record

_PAIR = re.compile(r"(-?\d+(?:\.\d+)?) ?([^\s\d()]\S*) \((?:about )?(-?\d+(?:\.\d+)?) ?([^\s\d()][^\s()]*)\)")


def find(record: Record, context: Context) -> Iterator[Finding]:
    """Reads `number unit (number unit)` in every text."""
    for path, text in context.texts.prose(record) if "(" in context.texts.all_prose(record) else ():
        for match in _PAIR.finditer(text) if "(" in text else ():
            one, two = units().get(match[2]), units().get(match[4])
            if not one or not two or one.dimension != two.dimension or one == two:
                continue
            meant = [from_si(to_si(float(match[1]), match[2], r), match[4], r) for r in ("absolute", "difference")]
            written = float(match[3])
            step = (
                10.0 ** -len(match[3].partition(".")[2])
                if "." in match[3]
                else 10.0 ** (len(match[3]) - len(match[3].rstrip("0")))
            )
            if all(abs(written - m) > max(step / 2, 1e-9) or abs(written - m) > 0.03 * abs(m) for m in meant):
                message = f"{field(record, path)}: {match[1]} {match[2]} is {significant(meant[0], 3)} {match[4]}, not {match[3]}"
                yield RULE.at(record, message, path=path)


RULE = Rule(
    code="UNIT-9",
    level="warning",
    scope="record",
    title="Conversion by hand that is wrong",
    what=(
        "Where a text gives a value in two units, such as 40 psi (276 kPa), the second is the first converted, to"
        " half a unit of its last digit."
    ),
    why="Two numbers that disagree leave the reader to guess which one is meant.",
    mend="Write the value that the message gives, or only one unit: pages convert by themselves.",
    example=Example(
        "components/fuel-filter.yaml",
        "fails: [Blocks slowly with dirt.]",
        'fails: ["Blocks slowly with dirt, up to a drop of 5 psi (43 kPa)."]',
    ),
    find=find,
)
