"""The bands of a reading: general ones by system, the maker's where the book holds them, and the place for the maker's."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.building.amounts import amount, band, remark
from bayleaf.pages.building.blocks import blocks, para, table
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small, stacked, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.records import Record, listed, mapped

MEANS = {
    "spread": "spread over many cars",
    "limit": "limit",
}
RULE = (
    "The maker's figure for this car decides. Outside a general band the reading has failed. Inside a spread the car may still be "
    "low, normal or high: look the figure up in the maker's service information."
)


def band_words(view: Uses, record: Record, path: tuple, reading: str) -> Markup:
    """One band: limits, or what a calculator expects and how far off it may be."""
    data = mapped(record.data[path[0]].get(path[1]))
    quantity = view.quantity(reading)
    if "expected" not in data:
        return band(view, record, path, quantity)
    expected = data["expected"]
    fed = [
        view.link(feed["reading"]) if "reading" in feed else text("the car")
        for feed in mapped(expected.get("inputs")).values()
        if "value" not in feed
    ]
    return inline(
        "what ",
        view.link(expected["calculator"]),
        " gives from ",
        joined(fed, " and "),
        ", ± ",
        amount(view, record, (*path, "within"), quantity),
    )


def bands_of(view: Uses, reading: str, kind: str, systems: Iterable[str]) -> list[tuple[Record, dict]]:
    """(record, band) of each of these systems, or of each current vehicle with one of them, that has a band for a reading."""
    owners = view.live("vehicles") if kind == "vehicles" else [r for s in systems if (r := view.get(s, "systems"))]
    fits = [r for r in owners if kind == "systems" or set(listed(r.data.get("systems"))) & set(systems)]
    return [(r, data) for r in fits if isinstance(data := mapped(r.data.get("bands")).get(reading), dict)]


def band_table(
    view: Uses, readings: Iterable[str], systems: list[str], blanks: bool = True, named: bool = True
) -> Markup:
    """General bands of several readings, one row for the systems that share a band.

    Not `named` on the reading's own page, which tells the normal answer above. With `blanks` there is room for the maker's figure and for what was read.
    """
    rows: list[list[object]] = []
    numbers = False
    space = [Markup('<span class="bl-line"></span>')] * 2 if blanks else []
    for reading in readings:
        record = view.get(reading, "readings")
        if record is None or record.data.get("purpose", "diagnosis") in ("recognition", "computation"):
            continue
        general = bands_of(view, reading, "systems", systems)
        healthy = listed(record.data.get("healthy")) if "answers" in record.data else []
        if healthy and named:
            rows.append(
                [
                    view.link(reading),
                    inline("healthy: ", strong(" or ".join(healthy).replace("-", " "))),
                    small("an answer, not a number"),
                    *space,
                ]
            )
        numbers = numbers or bool(general) or not healthy
        alike: dict[tuple[Markup, Markup], list[str]] = {}
        for owner, data in general:
            what = lines([strong(band_words(view, owner, ("bands", reading), reading)), small(MEANS[data["means"]])])
            alike.setdefault((what, small(remark(view, data))), []).append(owner.id)
        for (what, said), owners in alike.items():
            rows.append(
                [
                    view.link(reading),
                    what,
                    lines([stacked(view.links(owners)) if len(systems) > 1 else EMPTY, said]),
                    *space,
                ]
            )
        if not general and not healthy and record.data.get("purpose", "diagnosis") == "diagnosis":
            rows.append([view.link(reading), "no general band", small("only the maker's figure can judge it"), *space])
    head = [
        "Reading",
        "General band",
        "For, and where it comes from" if len(systems) > 1 else "Where it comes from",
        *(["Maker's figure", "You read"] if blanks else []),
    ]
    bands = table(head, rows, css="bl-bands") if named else table(head[1:], [row[1:] for row in rows], css="bl-bands")
    return blocks(bands, para(small(RULE)) if numbers else EMPTY) if bands else EMPTY


def maker_table(view: Uses, readings: Iterable[str], systems: list[str]) -> Markup:
    """The figures that the book's own vehicles have for these readings."""
    rows = [
        (
            view.link(owner.id),
            view.link(reading),
            strong(band_words(view, owner, ("bands", reading), reading)),
            remark(view, data),
        )
        for reading in readings
        for owner, data in bands_of(view, reading, "vehicles", systems)
    ]
    return table(("Car", "Reading", "Maker's figure", "Where it comes from"), rows)
