"""A symptom: what to ask, what to read first, what can cause it, and what to tell the customer."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.building.blocks import bullets, folds, para, section, table
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import MOST_ROWS, cards, index_page, long
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.faults import mend, proved
from bayleaf.pages.parts.shown_by import SOME, answer_words
from bayleaf.records import Record, listed, mapped

OUTSIDE = "A cause outside this book is always possible."
ABOUT = f"Bold is what differs from a sound car. {OUTSIDE} How common a fault is, is a judgement."
COLUMNS = 4  # of first readings in the table of causes: as many as a tablet shows without scrolling


def causes(view: Uses, symptom: str) -> list[Record]:
    """The faults that are felt as a symptom, the surest and commonest first."""
    rank = ("common", "occasional", "rare")
    faults = [r for r in view.live("faults") if symptom in mapped(r.data.get("felt_as"))]
    return sorted(
        faults, key=lambda r: (rank.index(r.data["commonness"]), r.data["felt_as"][symptom] != "always", r.title)
    )


def page(view: Uses, record: Record) -> str:
    """The page of one symptom."""
    data = record.data
    codes = [r for r in view.live("codes") if record.id in listed(r.data.get("symptoms"))]
    return record_page(
        view,
        record,
        [
            section("ask", "Ask the driver", bullets(view.prose(q) for q in data["ask"])),
            section("dangers", "Danger in itself", bullets(view.links(data.get("dangers"))))
            if listed(data.get("dangers"))
            else "",
            section("first", "Read these first", bullets(first_line(view, reading) for reading in data["first"])),
            section("causes", "What can cause it", *_causes(view, record)),
            section(
                "cannot", "While it lasts", para("These cannot be reached: ", joined(view.links(data.get("prevents"))))
            )
            if listed(data.get("prevents"))
            else "",
            section(
                "codes", "Codes that often come with it", long(len(codes), "all-codes", "codes", cards(view, codes))
            ),
            section("customer", "Words for the customer", para(view.prose(data.get("explain")), css="bl-quote")),
        ],
    )


def commonness(faults: list[Record]) -> dict[str, list[Record]]:
    """Faults by how common they are, the common ones first."""
    return {how: [f for f in faults if f.data["commonness"] == how] for how in ("common", "occasional", "rare")}


def first_line(view: Uses, reading: str, systems: Iterable[str] = ()) -> Markup:
    """A reading with the procedures that take it, each with its systems where there is a choice.

    A repair takes it to prove itself; whoever has yet to find the fault is not sent to one where another way is left.
    Of some systems only, what is for none of them is left out.
    """
    here, all = set(systems), view.takers.get(reading, [])
    takers = [p for p in all if not here or not here.isdisjoint(view.systems_of(p))] or all
    ways = [p for p in takers if p.id not in view.repairs] or takers
    if not ways:
        return view.link(reading)
    return lines(
        [
            inline(view.link(reading), small(" by")),
            *(inline(view.link(p.id), _on(view, view.systems_of(p)) if len(ways) > 1 else EMPTY) for p in ways),
        ]
    )


def _on(view: Uses, systems: list[str]) -> Markup:
    """The systems that something is for, unless it is for many."""
    return (
        small(" on ", joined(view.links(systems)))
        if 0 < len(systems) <= SOME and len(systems) < len(view.matrices)
        else EMPTY
    )


def _causes(view: Uses, record: Record) -> list[Markup]:
    """How many there are, and a table for each commonness; only the common ones stand open where they are many."""
    faults = causes(view, record.id)
    groups = commonness(faults)
    if not faults:
        return [para("No fault of this book is felt as this. ", small(OUTSIDE))]
    counts = joined(f"{len(those)} {how}" for how, those in groups.items() if those)
    lead = para(f"{len(faults)} fault{'s' if len(faults) > 1 else ''} of this book: ", counts, ". ", small(ABOUT))
    if len(faults) <= MOST_ROWS:
        return [lead, _cause_table(view, record, faults)]
    closed = [
        (f"cause-{how}", f"{how.capitalize()}", str(len(those)), _cause_table(view, record, those))
        for how, those in groups.items()
        if how != "common"
    ]
    return [lead, _cause_table(view, record, groups["common"]), folds(closed)]


def _cause_table(view: Uses, record: Record, faults: list[Record]) -> Markup:
    first = [r for r in record.data["first"] if view.get(r, "readings")][:COLUMNS]
    rows = []
    placed = {
        f.id: [s for s, matrix in view.matrices.items() if any(row.fault == f.id for row in matrix.rows)]
        for f in faults
    }
    for fault in sorted(faults, key=lambda f: len(placed[f.id]) <= SOME):  # first what may be in front of most people
        said, on = [_said(view, fault.id, reading) for reading in first], placed[fault.id]
        name = lines(
            [
                view.link(fault.id),
                small(fault.data["commonness"], ", felt ", fault.data["felt_as"][record.id]),
                _on(view, on),
            ]
        )
        ways = [item for item in fault.data["mended_by"] if isinstance(item, str)] or fault.data["mended_by"]
        rows.append((name, *said, lines(mend(view, item) for item in ways), proved(view, fault.data["proved_by"])))
    return table(("Cause", *(view.link(r) for r in first), "Repair", "Verify with"), rows, css="bl-causes")


def _said(view: Uses, fault: str, reading: str) -> Markup:
    """What a reading may show with this fault, over all its stages and systems."""
    answers: set[str] = set()
    healthy: frozenset[str] = frozenset()
    for matrix in view.matrices.values():
        for row in matrix.rows:
            if row.fault == fault and reading in matrix.healthy:
                healthy |= matrix.healthy[reading]
                if reading not in row.answers:
                    return answer_words(None, healthy)
                answers |= row.answers[reading]
    return answer_words(answers or None, healthy)


def index(view: Uses) -> str:
    """Symptoms in the driver's words."""
    rows = list(view.live("symptoms"))
    return index_page("symptoms", "What does the car do? In the words of drivers.", cards(view, rows))
