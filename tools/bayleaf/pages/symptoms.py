"""A symptom: what to ask, what to read first, what can cause it, and what to tell the customer."""

from __future__ import annotations

from bayleaf.pages.faults import mend, proved
from bayleaf.pages.frame import cards, finish, index_page
from bayleaf.pages.shown_by import answer_words
from bayleaf.pages.text import Markup
from bayleaf.pages.uses import Uses
from bayleaf.pages.write import bullets, joined, lines, para, section, small, table, words
from bayleaf.records import Record, listed, mapped

COLUMNS = 4     # of first readings in the table of causes: as many as a tablet shows without scrolling


def causes(view: Uses, symptom: str) -> list[Record]:
    """The faults that are felt as a symptom, the surest and commonest first."""
    rank = ("common", "occasional", "rare")
    found = [r for r in view.live("faults") if symptom in mapped(r.data.get("felt_as"))]
    return sorted(found, key=lambda r: (rank.index(r.data["commonness"]), r.data["felt_as"][symptom] != "always", r.title))


def symptom_page(view: Uses, record: Record) -> str:
    """The page of one symptom."""
    data = record.data
    codes = [r for r in view.live("codes") if record.id in listed(r.data.get("symptoms"))]
    return finish(view, record, [
        section("ask", "Ask the driver", bullets(view.prose(q) for q in data["ask"])),
        section("first", "Read these first", bullets(first_line(view, reading) for reading in data["first"])),
        section("causes", "What can cause it", _causes(view, record),
                para(small("Bold is what differs from a sound car. A cause outside this book is always possible. How common a fault is, is a judgement."))),
        section("cannot", "While it lasts", para("These cannot be reached: ", joined(view.links(data.get("prevents"))))) if listed(data.get("prevents")) else "",
        section("codes", "Codes that often come with it", cards(view, codes)),
        section("customer", "Words for the customer", para(view.prose(data.get("explain")), css="bl-quote")),
    ])  # fmt: skip


def first_line(view: Uses, reading: str) -> Markup:
    """A reading with the procedures that take it."""
    ways = [view.link(p.id) for p in view.takers.get(reading, [])]
    return words(view.link(reading), small(" by "), joined(ways, " or ")) if ways else view.link(reading)


def _causes(view: Uses, record: Record) -> Markup:
    first = [r for r in record.data["first"] if view.get(r, "readings")][:COLUMNS]
    rows = []
    for fault in causes(view, record.id):
        said = [_said(view, fault.id, reading) for reading in first]
        name = lines([view.link(fault.id), small(fault.data["commonness"], ", felt ", fault.data["felt_as"][record.id])])
        rows.append((name, *said, lines(mend(view, item) for item in fault.data["mended_by"]), proved(view, fault.data["proved_by"])))
    return table(("Cause", *(view.link(r) for r in first), "Mended by", "Proved by"), rows, css="bl-causes")


def _said(view: Uses, fault: str, reading: str) -> Markup:
    """What a reading may show with this fault, over all its stages and systems."""
    answers: set[str] = set()
    normal = ""
    for matrix in view.matrices.values():
        for row in matrix.rows:
            if row.fault == fault and reading in matrix.normal:
                normal = matrix.normal[reading]
                if reading not in row.answers:
                    return answer_words(None, normal)
                answers |= row.answers[reading]
    return answer_words(answers or None, normal)


def index(view: Uses) -> str:
    """Symptoms in the driver's words."""
    rows = [s for s in view.live("symptoms")]
    return index_page("symptoms", "What does the car do? In the words of drivers.", cards(view, rows))
