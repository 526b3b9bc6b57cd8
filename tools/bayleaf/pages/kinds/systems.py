"""A system: how it works, its paths, its bands, its readings and faults, and what cannot be told apart on it."""

from __future__ import annotations

from bayleaf.pages.building.amounts import amount, remark
from bayleaf.pages.building.blocks import blocks, bullets, para, section, table
from bayleaf.pages.building.frame import record_page, shown
from bayleaf.pages.building.index import grouped, index_page, long
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small, stacked, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.cautions import by_severity, line
from bayleaf.pages.kinds.tasks import work
from bayleaf.pages.parts.bands import band_table
from bayleaf.pages.parts.embed import embedded
from bayleaf.pages.parts.groups import groups, symptom_figures
from bayleaf.records import Record, listed, mapped

FAMILIES = {
    "fuel": "Fuel",
    "induction": "Induction",
    "mixture": "Mixture",
    "exhaust": "Exhaust",
    "layer": "Layers over other systems",
}


def page(view: Uses, record: Record) -> str:
    """The page of one system."""
    data = record.data
    matrix = view.matrices.get(record.id)
    readings = list(matrix.healthy) if matrix else []
    bands = list(mapped(data.get("bands")))
    procedures = [p for p in view.live("procedures") if record.id in listed(p.data.get("systems"))]
    faults = list(dict.fromkeys(row.fault for row in matrix.rows)) if matrix else []
    return record_page(
        view,
        record,
        [
            section("recognize", "How to recognize it", blocks(_shows(view, data), _mistaken(view, data))),
            section("brings", "What it adds to other systems", _brings(view, data)),
            section("how", "How it works", blocks(*(para(view.prose(p)) for p in data["explains"]))),
            section("changed", "What changed from the generation before", para(view.prose(data.get("changed")))),
            section("paths", "Its paths", blocks(_paths(view, record), _optional(view, data))),
            section("bands", "General bands", band_table(view, bands, [record.id], blanks=False)),
            section("worked", "Worked out for this car", embedded(view, record, bands, [record.id], closed=True)),
            section("work", "Work on it", work(view, procedures)),
            section("readings", "Readings", long(len(readings), "all-readings", "readings", _readings(view, readings))),
            section("faults", "Faults", long(len(faults), "all-faults", "faults", _faults(view, faults))),
            section("groups", "What cannot be told apart", groups(view, record.id)),
            section("complaints", "How far a complaint can be traced", symptom_figures(view, record.id)),
        ],
    )


def _shows(view: Uses, data: dict) -> Markup:
    return bullets(
        inline(view.link(reading), ": ", strong(shown(answer))) for reading, answer in mapped(data.get("shows")).items()
    )


def _mistaken(view: Uses, data: dict) -> Markup:
    others = bullets(
        inline(view.link(item["system"]), ": ", view.prose(item["because"]))
        for item in listed(data.get("mistaken_for"))
    )
    return blocks(para(strong("Often taken for:")), others) if others else EMPTY


def _brings(view: Uses, data: dict) -> Markup:
    brings = mapped(data.get("brings"))
    cautions = bullets(line(view, caution) for caution in by_severity(view, listed(brings.get("cautions"))))
    return blocks(
        para("It lies over: ", joined(FAMILIES[f].lower() for f in listed(data.get("adds_to"))))
        if listed(data.get("adds_to"))
        else EMPTY,
        cautions,
        para("Acts that mean more on such a car: ", joined(view.links(brings.get("acts"))))
        if listed(brings.get("acts"))
        else EMPTY,
        para("States to reach first: ", joined(view.links(brings.get("states"))))
        if listed(brings.get("states"))
        else EMPTY,
    )


def _paths(view: Uses, record: Record) -> Markup:
    rows = []
    for i, path in enumerate(listed(record.data.get("paths"))):
        greatest = EMPTY
        if "greatest" in path:
            greatest = lines(
                [strong(amount(view, record, ("paths", i, "greatest"))), small(remark(view, path["greatest"]))]
            )
        side = f", {path['side']} side" if "side" in path else ""
        rows.append(
            (
                lines([strong(path["name"]), small(path["carries"], side)]),
                joined(view.links(path["through"]), " → "),
                greatest,
            )
        )
    return table(("Path", "Through", "Greatest pressure that can occur"), rows, css="bl-paths")


def _optional(view: Uses, data: dict) -> Markup:
    some = joined(view.links(data.get("has")))
    return para("Not every such car has: ", some, ".") if some else EMPTY


def _readings(view: Uses, readings: list[str]) -> Markup:
    rows = [
        (
            view.link(r),
            joined(view.links(view.places(r)), " to "),
            view.link(view.book.of("readings")[r].data["when"]),
            lines(view.link(p.id) for p in view.takers.get(r, [])),
        )
        for r in readings
    ]
    return table(("Reading", "Where", "When", "Taken by"), rows)


def _faults(view: Uses, faults: list[str]) -> Markup:
    records = [view.book.of("faults")[f] for f in faults]
    rows = [
        (
            view.link(r.id),
            view.link(r.data["part"]),
            r.data["commonness"],
            stacked(view.links(list(mapped(r.data.get("felt_as"))))),
        )
        for r in records
    ]
    return table(("Fault", "Part", "How common (a judgement)", "Complaint"), rows)


def index(view: Uses) -> str:
    """What is in front of me: what is seen on the car, and then the systems by family."""
    listing = grouped(view, by_family(view))
    return index_page(
        "systems",
        "What is in front of me? Tell the system from what can be seen, then open its page.",
        listing,
        section("seen", "What do you see?", recognition(view)),
    )


def by_family(view: Uses) -> list[tuple[str, str, list[Record]]]:
    """(family, heading, systems) of every family."""
    return [
        (family, title, [s for s in view.live("systems") if s.data["family"] == family])
        for family, title in FAMILIES.items()
    ]


def recognition(view: Uses) -> Markup:
    """Reading and answer to the systems that show it."""
    by_answer: dict[tuple[str, str], list[str]] = {}
    for system in view.live("systems"):
        for reading, answer in mapped(system.data.get("shows")).items():
            by_answer.setdefault((reading, answer), []).append(system.id)
    rows = [
        (view.link(reading), strong(shown(answer)), lines(view.links(systems)))
        for (reading, answer), systems in sorted(
            by_answer.items(), key=lambda item: (view.title(item[0][0]), item[0][1])
        )
    ]
    return table(("Look at", "You see", "It may be"), rows)
