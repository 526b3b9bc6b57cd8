"""An invented vehicle of the demonstration: its systems, its features and its maker's figures."""

from __future__ import annotations

from bayleaf.pages.building.amounts import remark, sourced
from bayleaf.pages.building.blocks import facts, section, table
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import cards, index_page
from bayleaf.pages.building.inline import stacked, strong
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.bands import band_words
from bayleaf.records import Record, mapped


def page(view: Uses, record: Record) -> str:
    """The page of one vehicle, marked as invented at its top."""
    data = record.data
    rows = [
        (view.link(reading), strong(band_words(view, record, ("bands", reading), reading)), remark(view, band))
        for reading, band in mapped(data.get("bands")).items()
    ]
    jobs = [j for j in view.live("jobs") if j.data.get("vehicle") == record.id]
    return record_page(
        view,
        record,
        [
            facts(
                [
                    ("Systems", stacked(view.links(data["systems"]))),
                    ("Has", stacked(view.links(data["has"]))),
                    ("Runs on", view.link(data["fuel"])),
                    ("Kept at", sourced(view, record, ("altitude",))),
                ]
            ),
            section("bands", "Its maker's figures", table(("Reading", "Maker's figure", "Where it comes from"), rows)),
            section("jobs", "Jobs on it", cards(view, jobs)),
        ],
    )


def index(view: Uses) -> str:
    """All vehicles."""
    return index_page(
        "vehicles",
        "INVENTED for the demonstration: no such car exists, and no figure here is any maker's.",
        cards(view, view.live("vehicles")),
    )
