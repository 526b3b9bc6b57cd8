"""A fault: its row by stage, why, how it is felt, what mends it and what proves the mend."""

from __future__ import annotations

from bayleaf.diagnosis.faults.matrix import Matrix, Row
from bayleaf.diagnosis.faults.spared import disturbed
from bayleaf.diagnosis.verdicts.verdict import NORMAL
from bayleaf.pages.building.blocks import blocks, bullets, facts, folds, para, section, table
from bayleaf.pages.building.frame import record_page, shown
from bayleaf.pages.building.index import grouped, index_page
from bayleaf.pages.building.inline import EMPTY, FEW, inline, joined, lines, small, stacked, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.shown_by import answer_words
from bayleaf.records import Record, listed, mapped

ABOUT = (
    "Bold is what differs, or may differ, from a healthy car. What stays healthy cannot accuse this fault. A reading that is named neither here "
    "nor under what it leaves alone may show anything."
)


def page(view: Uses, record: Record) -> str:
    """The page of one fault."""
    data = record.data
    systems = [s for s, matrix in view.matrices.items() if any(row.fault == record.id for row in matrix.rows)]
    return record_page(
        view,
        record,
        [
            facts(
                [
                    ("Part", view.link(data["part"])),
                    ("Disturbs", _disturbs(view, record)),
                    ("Damages", stacked(view.links(data.get("damages")))),
                    ("Happens on", stacked(view.links(systems))),
                    ("How common", inline(data["commonness"], small(" (a judgement)"))),
                    ("Complaint", _felt(view, data)),
                    ("Repair", lines(mend(view, item) for item in listed(data.get("mended_by")))),
                    ("Verify with", proved(view, data.get("proved_by"))),
                ]
            ),
            section("shows", "What the readings show", para(small(ABOUT)), *_rows(view, record, systems))
            if systems
            else EMPTY,
            section("spares", "What it leaves alone", _spared(view, record, systems)),
            section("alike", "Hard to tell apart from", bullets(_alike(view, record, systems))),
        ],
    )


def mend(view: Uses, item: object) -> Markup:
    """One way to mend a fault: a procedure or words."""
    return view.link(item) if isinstance(item, str) else view.prose(mapped(item).get("words"))


def proved(view: Uses, item: object) -> Markup:
    """The reading that proves the mend, or why none can."""
    return view.link(item) if isinstance(item, str) else inline("no reading: ", view.prose(mapped(item).get("none")))


def _felt(view: Uses, data: dict) -> Markup:
    felt = mapped(data.get("felt_as"))
    return lines(inline(view.link(symptom), small(" ", how)) for symptom, how in felt.items()) or text(
        "nobody feels it"
    )


def _rows(view: Uses, record: Record, systems: list[str]) -> list[Markup]:
    """One table for all systems that agree, else one for each."""
    tables: dict[tuple[Markup, tuple[Markup, ...]], list[str]] = {}
    for system in systems:
        rows = [row for row in view.matrices[system].rows if row.fault == record.id]
        tables.setdefault(_table(view, record, rows, view.matrices[system]), []).append(system)
    parts = [(those, blocks(table, _still(still, those[0]))) for (table, still), those in tables.items()]
    if len(parts) == 1:
        return [parts[0][1]]
    return [
        folds((f"on-{those[0]}", joined((view.title(s) for s in those), " and "), "", inner) for those, inner in parts)
    ]


def _still(still: tuple[Markup, ...], system: str) -> Markup:
    """What stays healthy, folded where it is long."""
    if len(still) <= FEW:
        return para(strong("Stay healthy: "), joined(still), ".") if still else EMPTY
    return folds([(f"still-{system}", "Stay healthy", f"{len(still)} readings", para(stacked(still)))])


def _table(view: Uses, record: Record, rows: list[Row], matrix: Matrix) -> tuple[Markup, tuple[Markup, ...]]:
    """The readings that tell this fault, and those of which it says that they stay healthy."""
    because, healthy = mapped(record.data.get("because")), matrix.healthy
    mine = sum(1 << i for i, row in enumerate(matrix.rows) if row.fault == record.id)
    named = {
        reading
        for row in rows
        for reading in row.answers
        if matrix.by_graph[reading] & mine != mine or reading in because
    }
    still = [
        r
        for r in healthy
        if r in named and r not in because and all(row.answers.get(r, frozenset("?")) <= healthy[r] for row in rows)
    ]
    grid = [
        (
            view.link(reading),
            *(answer_words(row.answers.get(reading), healthy[reading]) for row in rows),
            small(view.prose(because.get(reading))),
        )
        for reading in sorted(healthy, key=lambda r: (r not in because, view.title(r)))
        if reading in named and reading not in still
    ]
    grid_table = table(("Reading", *(shown(row.stage) for row in rows), "Why"), grid, css="bl-stages")
    return grid_table, tuple(
        inline(
            view.link(r),
            small(" (", joined(map(shown, sorted(healthy[r])), " or "), ")") if healthy[r] != {NORMAL} else "",
        )
        for r in sorted(still, key=view.title)
    )


def _disturbs(view: Uses, record: Record) -> Markup:
    return stacked(view.links(disturbed(view.book, record)))


def _spared(view: Uses, record: Record, systems: list[str]) -> Markup:
    """The readings that are healthy by the graph alone, on every system of the fault that has them, folded."""
    masks = {s: sum(1 << i for i, row in enumerate(view.matrices[s].rows) if row.fault == record.id) for s in systems}
    by: dict[str, bool] = {}
    for system, mask in masks.items():
        for reading, spared in view.matrices[system].by_graph.items():
            by[reading] = by.get(reading, True) and spared & mask == mask
    spared_links = [view.link(reading) for reading in sorted(by, key=view.title) if by[reading]]
    return (
        blocks(
            para(
                "Nothing that this fault disturbs reaches what these readings look at, so they read as on a healthy car, and whoever "
                "finds one that does not clears the fault by it. That is what this book says of the car and not a proof. Doubt it "
                "where it does not fit."
            ),
            folds([("spared", "Healthy by the graph", f"{len(spared_links)} readings", para(stacked(spared_links)))]),
        )
        if spared_links
        else EMPTY
    )


def _alike(view: Uses, record: Record, systems: list[str]) -> list[Markup]:
    """Faults that no reading of the system is sure to part from this one."""
    alike = []
    for system in systems:
        others = view.isolations[system].whole.alike.get(record.id, ())
        if others:
            alike.append(
                inline(joined(view.links(list(others))), small(" on "), view.link(system))
                if len(systems) > 1
                else joined(view.links(list(others)))
            )
    return alike


def index(view: Uses) -> str:
    """Faults by what the part carries that they sit in, part by part."""
    faults = sorted(view.live("faults"), key=lambda r: (view.title(r.data["part"]).lower(), r.title.lower()))
    groups = view.by_carried(faults, lambda fault: fault.data["part"])
    return index_page("faults", "What can be wrong, part by part.", grouped(view, groups))
