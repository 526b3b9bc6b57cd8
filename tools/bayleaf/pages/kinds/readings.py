"""A reading: what it is, how it is taken, what it should be, and which faults give which answer."""

from __future__ import annotations

from bayleaf.diagnosis.faults.stages import healthy_of
from bayleaf.pages.building.amounts import amount, remark
from bayleaf.pages.building.blocks import bullets, facts, section, table
from bayleaf.pages.building.frame import record_page, shown
from bayleaf.pages.building.index import cards, grouped, index_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, small, stacked, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.bands import band_table, maker_table
from bayleaf.pages.parts.shown_by import answers_of, fault_cell, showing
from bayleaf.records import Record, listed, mapped

EACH = {"cylinder": "once for each cylinder", "bank": "once for each bank", "connection": "once for each connection"}


def page(view: Uses, record: Record) -> str:
    """The page of one reading."""
    data, id = record.data, record.id
    systems = [
        s
        for s, matrix in view.matrices.items()
        if id in matrix.healthy or id in mapped(view.book.of("systems")[s].data.get("bands"))
    ]
    shows = [(r, a) for r in view.live("systems") if (a := mapped(r.data.get("shows")).get(id))]
    return record_page(
        view,
        record,
        [
            facts(
                [
                    ("Measures", _what(view, record)),
                    ("Where", _where(view, data)),
                    ("When", view.link(data["when"])),
                    ("Taken", EACH.get(data["each"], "")),
                    ("Counts only with", stacked(view.links(data.get("valid_if")))),
                    (
                        "Healthy car",
                        strong(joined((shown(a) for a in data["healthy"]), " or ")) if "healthy" in data else "",
                    ),
                    ("Looks at", stacked(view.links(data.get("observes")))),
                    ("Answers as", view.link(data["answers_as"]) if "answers_as" in data else ""),
                    ("Purpose", data["purpose"] if data.get("purpose", "diagnosis") != "diagnosis" else ""),
                ]
            ),
            section(
                "agrees",
                "Must agree with",
                bullets(_relation(view, record, i) for i, _ in enumerate(listed(data.get("agrees_with")))),
            ),
            section("taken", "How it is taken", cards(view, view.takers.get(id, []))),
            section("bands", "What it should be", band_table(view, [id], systems, blanks=False, named=False)),
            section("demonstration", "Example vehicles (invented)", maker_table(view, [id], systems)),
            section(
                "recognizes",
                "What it recognizes",
                table(("You see", "It is"), [(strong(shown(a)), view.link(r.id)) for r, a in shows]),
            ),
            section("faults", "Faults by answer", _faults(view, record, systems)),
        ],
    )


def _relation(view: Uses, record: Record, i: int) -> Markup:
    """What a reading must equal, within how much, and why."""
    relation = record.data["agrees_with"][i]
    sum_of = joined(view.links(relation["sum_of"]), " and ")
    width = amount(view, record, ("agrees_with", i, "within"))
    return inline(sum_of, ", within ", width, ": ", remark(view, relation))


def _what(view: Uses, record: Record) -> Markup:
    data = record.data
    computed = mapped(data.get("computed"))
    if "answers" in data:
        return inline("a question; the answers are ", joined((shown(a) for a in data["answers"]), " · "))
    quantity = view.quantity(record.id)
    named = (
        inline(
            view.link(quantity.id),
            small(f" in {data.get('unit') or quantity.shown[0]}", _reference(quantity.reference)),
        )
        if quantity
        else EMPTY
    )
    if "difference" in computed:
        return inline(
            named,
            "; worked out as ",
            view.link(computed["difference"]["of"]),
            " less ",
            view.link(computed["difference"]["less"]),
        )
    if "calculator" in computed:
        fed = [view.link(feed["reading"]) for feed in mapped(computed.get("inputs")).values() if "reading" in feed]
        return inline(
            named, "; worked out by ", view.link(computed["calculator"]), " from " if fed else "", joined(fed, " and ")
        )
    return named


def _reference(reference: str) -> str:
    return "" if reference == "none" else f", {reference}"


def _where(view: Uses, data: dict) -> Markup:
    between = listed(data.get("between"))
    if between:
        return inline(
            "from ",
            joined(view.links(between), " to "),
            small(" (the positive lead first)") if len(between) == 2 else "",
        )
    return view.link(data["at"]) if "at" in data else EMPTY


def _faults(view: Uses, record: Record, systems: list[str]) -> Markup:
    showers = showing(view, record.id, [s for s in systems if s in view.matrices])
    healthy = healthy_of(view.book, record.id, tuple(systems))
    rows = [
        (
            shown(answer) if answer in healthy else strong(shown(answer)),
            fault_cell(view, showers[answer], len(systems), answer in healthy),
        )
        for answer in answers_of(view, record.id)
        if answer in showers
    ]
    return table(("Answer", "Faults that show it"), rows, css="bl-results")


def index(view: Uses) -> str:
    """What do I measure: readings by what is carried where they are taken, part by part."""

    def place(reading: Record) -> str:
        return next(iter(view.places(reading.id)), "")

    readings = sorted(view.live("readings"), key=lambda r: (view.title(place(r)).lower(), r.title.lower()))
    about = "What do I measure? Part by part. A reading always has its condition."
    return index_page("readings", about, grouped(view, view.by_carried(readings, place)))
