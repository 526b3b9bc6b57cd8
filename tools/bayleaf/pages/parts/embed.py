"""Calculators on the pages of procedures and systems."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.building.blocks import box, folds, para, section
from bayleaf.pages.building.inline import strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.worked import value_table
from bayleaf.records import Record, listed, mapped


def embedded(
    view: Uses, record: Record, readings: Iterable[str], systems: Iterable[str], closed: bool = False
) -> Markup:
    """The calculators that a record names, and those that give the expected value of its readings.

    `closed`: without a heading, and each opens when it is touched, for a page that is read and not worked from.
    """
    ids = list(listed(record.data.get("calculators")))
    for system in systems:
        bands = mapped(view.book.of("systems")[system].data.get("bands"))
        for reading in readings:
            expected = mapped(mapped(bands.get(reading)).get("expected"))
            ids += [expected["calculator"]] if expected else []
    known = [id for id in dict.fromkeys(ids) if id in view.calculators]
    if closed:
        return folds(_closed(view, id) for id in known)
    return section("worked-out", "Worked out for this car", *(_open(view, id) for id in known), level=3)


def _open(view: Uses, id: str) -> Markup:
    """A calculator's name, what it says, and its table."""
    record = view.book.of("calculators")[id]
    return box(
        "bl-embedded",
        para(strong(view.link(id)), ". ", view.prose(record.data["summary"])),
        value_table(record, view.calculators[id]),
    )


def _closed(view: Uses, id: str) -> tuple[str, str, str, Markup]:
    """The same as a fold."""
    record = view.book.of("calculators")[id]
    inner = box(
        "bl-embedded",
        value_table(record, view.calculators[id]),
        para(view.link(id, "Its form, chart and formula"), css="bl-all"),
    )
    return id, record.title, view.plain(record.data["summary"]), inner
