"""Calculators on the pages of procedures and systems."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.text import Markup
from bayleaf.pages.uses import Uses
from bayleaf.pages.worked import value_table
from bayleaf.pages.write import EMPTY, box, para, section, strong
from bayleaf.records import Record, listed, mapped


def embedded(view: Uses, record: Record, readings: Iterable[str], systems: Iterable[str]) -> Markup:
    """The calculators that a record names, and those that give the expected value of its readings."""
    ids = list(listed(record.data.get("calculators")))
    for system in systems:
        bands = mapped(view.book.of("systems")[system].data.get("bands"))
        for reading in readings:
            expected = mapped(mapped(bands.get(reading)).get("expected"))
            ids += [expected["calculator"]] if expected else []
    made = [_one(view, id) for id in dict.fromkeys(ids) if id in view.calculators]
    return section("worked-out", "Worked out for this car", *made, level=3) if made else EMPTY


def _one(view: Uses, id: str) -> Markup:
    """A calculator's name, what it says, and its table."""
    record = view.book.of("calculators")[id]
    return box("bl-embedded", para(strong(view.link(id)), ". ", view.prose(record.data["summary"])), value_table(record, view.calculators[id]))
