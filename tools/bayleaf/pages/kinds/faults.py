"""A fault: its row by stage, why, how it is felt, what mends it and what proves the mend."""

from __future__ import annotations

from bayleaf.diagnosis.faults.matrix import Row
from bayleaf.diagnosis.faults.stages import lies_on, normal_of
from bayleaf.pages.building.blocks import blocks, bullets, facts, folds, para, section, table
from bayleaf.pages.building.frame import record_page, shown
from bayleaf.pages.building.index import grouped, index_page
from bayleaf.pages.building.inline import EMPTY, FEW, inline, joined, lines, small, stacked, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.shown_by import answer_words
from bayleaf.records import Record, listed, mapped

ABOUT = (
    "Bold is what differs, or may differ, from a sound car. What stays normal cannot accuse this fault, and a reading that is not named may "
    "show anything."
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
                    ("Happens on", stacked(view.links(systems))),
                    ("How common", inline(data["commonness"], small(" (a judgement)"))),
                    ("Felt as", _felt(view, data)),
                    ("Mended by", lines(mend(view, item) for item in listed(data.get("mended_by")))),
                    ("Proved by", proved(view, data.get("proved_by"))),
                ]
            ),
            section("shows", "What the readings show", para(small(ABOUT)), *_rows(view, record, systems))
            if systems
            else EMPTY,
            section("elsewhere", "What it leaves alone", _elsewhere(view, data, systems)),
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
        tables.setdefault(_table(view, record, rows, view.matrices[system].normal), []).append(system)
    parts = [(those, blocks(table, _still(still, those[0]))) for (table, still), those in tables.items()]
    if len(parts) == 1:
        return [parts[0][1]]
    return [
        folds((f"on-{those[0]}", joined((view.title(s) for s in those), " and "), "", inner) for those, inner in parts)
    ]


def _still(still: tuple[Markup, ...], system: str) -> Markup:
    """What stays normal, folded where it is long."""
    if len(still) <= FEW:
        return para(strong("Stay normal: "), joined(still), ".") if still else EMPTY
    return folds([(f"still-{system}", "Stay normal", f"{len(still)} readings", para(stacked(still)))])


def _table(view: Uses, record: Record, rows: list[Row], normal: dict[str, str]) -> tuple[Markup, tuple[Markup, ...]]:
    """The readings that tell this fault, and those that stay normal with it."""
    because = mapped(record.data.get("because"))
    named = {reading for row in rows for reading in row.answers}
    still = [
        r for r in normal if r in named and r not in because and all(row.answers.get(r) == {normal[r]} for row in rows)
    ]
    grid = [
        (
            view.link(reading),
            *(answer_words(row.answers.get(reading), normal[reading]) for row in rows),
            small(view.prose(because.get(reading))),
        )
        for reading in sorted(normal, key=lambda r: (r not in because, view.title(r)))
        if reading in named and reading not in still
    ]
    grid_table = table(("Reading", *(shown(row.stage) for row in rows), "Why"), grid, css="bl-stages")
    return grid_table, tuple(
        inline(view.link(r), small(" (", shown(normal[r]), ")") if normal[r] != "normal" else "")
        for r in sorted(still, key=view.title)
    )


def _elsewhere(view: Uses, data: dict, systems: list[str]) -> Markup:
    """The paths of the systems that the fault happens on, and those that a car has only with another system beside them."""
    elsewhere = mapped(data.get("elsewhere"))
    if not elsewhere:
        return EMPTY
    own = view.layout.named(systems)
    here = [name for name in elsewhere["normal_on"] if name in own]
    beside = [name for name in elsewhere["normal_on"] if name not in own]
    moved = _moved(view, data, set(beside))
    return blocks(
        para("Readings on ", joined(here, " and "), " stay normal. ", view.prose(elsewhere["because"]))
        if here
        else EMPTY,
        para(
            "In a car that has one of these paths",
            " as well" if here else "",
            ", the readings on it stay normal: ",
            joined(beside),
            ". ",
            EMPTY if here else inline(view.prose(elsewhere["because"]), " "),
            "What is worked out from trims, gases, engine speed or boost is left open there",
            ", and these may differ:" if moved else ".",
        )
        if beside
        else EMPTY,
        bullets(moved),
    )


def _moved(view: Uses, data: dict, names: set[str]) -> list[Markup]:
    """The readings on paths of these names that some stage itself says may be other than normal, with every answer that a stage gives."""
    paths = {(s, name) for s in view.matrices for name in names & view.layout.names[s]}
    said: dict[str, set[str]] = {}
    for stage in mapped(data.get("stages")).values():
        for reading, answer in stage.items():
            if (
                reading != "like"
                and reading in view.book.of("readings")
                and lies_on(view.book, view.layout, reading, paths)
            ):
                said.setdefault(reading, set()).update(listed(answer) or [answer])
    normal = {reading: normal_of(view.book, reading) for reading in said}
    return [
        inline(view.link(r), ": ", answer_words(frozenset(said[r]), normal[r]))
        for r in sorted(said, key=view.title)
        if said[r] != {normal[r]}
    ]


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
