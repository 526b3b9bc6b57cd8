"""Equipment: what it measures, what it may be out by, how it is set up and how it misleads."""

from __future__ import annotations

from bayleaf.pages.building.amounts import amount, band, basis, typed
from bayleaf.pages.building.blocks import bullets, facts, section
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import cards, grouped, index_page
from bayleaf.pages.building.inline import EMPTY, inline, lines, stacked
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.tasks import work
from bayleaf.quantities import Quantity
from bayleaf.records import Record, listed, mapped

WIDTHS = (
    ("resolution", "Smallest step shown"),
    ("readability", "Can be read to"),
    ("repeatability", "Repeats within"),
    ("rated", "Rated for"),
)


def page(view: Uses, record: Record) -> str:
    """The page of one piece of equipment, or of a type of it."""
    data = record.data
    quantity = next((q for id in listed(data.get("measures")) if (q := view.desk.quantities.get(id))), None)
    numbers = any(field in data for field in ("range", "error", *(name for name, _ in WIDTHS)))
    kinds = [r for r in view.live("equipment") if r.data.get("type") == record.id]
    used = {r.id: r for type in view.types(record.id) for r in view.referrers.get(type, []) if r.kind == "procedures"}
    return record_page(
        view,
        record,
        [
            facts(
                [
                    ("A kind of", view.link(data["type"]) if "type" in data else ""),
                    ("Protects", "the person who wears it; taken as being in every shop" if data["protective"] else ""),
                    ("Measures", stacked(view.links(data.get("measures")))),
                    (
                        "Scale",
                        band(view, record, ("range",), quantity if _fits(quantity, data.get("range")) else None)
                        if "range" in data
                        else "",
                    ),
                    ("May be out by", _error(view, record)),
                    *((label, amount(view, record, (name,))) for name, label in WIDTHS if name in data),
                    (
                        "Where the figures come from",
                        basis(view, data.get("basis")) if numbers or "basis" in data else "",
                    ),
                ]
            ),
            section("kinds", "Of this kind", cards(view, kinds)),
            section("setup", "Before it is used", bullets(view.prose(item) for item in listed(data.get("setup")))),
            section("misleads", "How it misleads", bullets(view.prose(item) for item in listed(data.get("misleads")))),
            section("used", "Used in", work(view, list(used.values()))),
        ],
    )


def _fits(quantity: Quantity | None, data: object) -> bool:
    return quantity is not None and mapped(data).get("unit") in quantity.units


def _error(view: Uses, record: Record) -> Markup:
    error = mapped(record.data.get("error"))
    if "zones" in error:
        return lines(
            inline(
                typed(record, ("error", "zones", i, "percent_of_span")),
                " % of the span from ",
                band(view, record, ("error", "zones", i)),
            )
            for i in range(len(error["zones"]))
        )
    if "counts" in error:
        return text(f"{typed(record, ('error', 'percent_of_reading'))} % of the reading and {error['counts']} counts")
    return amount(view, record, ("error",)) if error else EMPTY


def index(view: Uses) -> str:
    """Equipment: instruments by type, then tools and adapters, then what protects a person."""
    groups: dict[str, list[Record]] = {"Instruments": [], "Tools and adapters": [], "Protective equipment": []}
    for record in view.live("equipment"):
        name = (
            "Protective equipment"
            if record.data["protective"]
            else "Instruments"
            if listed(record.data.get("measures"))
            else "Tools and adapters"
        )
        groups[name].append(record)
    listing = grouped(view, ((name.split()[0].lower(), name, those) for name, those in groups.items()))
    return index_page("equipment", "What is used, what it may be out by, and how it misleads.", listing)
