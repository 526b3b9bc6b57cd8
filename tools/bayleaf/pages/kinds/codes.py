"""A trouble code: what sets it, what to read first, and what it does not say."""

from __future__ import annotations

from collections import Counter

from bayleaf.diagnosis.faults.reported import reports_of
from bayleaf.pages.building.amounts import basis
from bayleaf.pages.building.blocks import blocks, bullets, facts, folds, para, section
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import MOST_OPEN, cards, grouped, index_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, small, stacked, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.symptoms import OUTSIDE, causes, commonness, first_line
from bayleaf.pages.parts.reported import cause_list, fits, split_table
from bayleaf.records import Record, listed

FEW = 5  # codes that are too few for a range of their own


def page(view: Uses, record: Record) -> str:
    """The page of one code."""
    data = record.data
    symptoms = [s for id in listed(data.get("symptoms")) if (s := view.get(id, "symptoms"))]
    on = listed(data.get("systems"))
    return record_page(
        view,
        record,
        [
            section(
                "sets",
                "What sets it",
                para(view.prose(data["sets"])),
                para(
                    small(
                        "Meaning: ",
                        basis(view, data["basis"]),
                        ". The maker's own conditions decide; save the stored data before anything is disconnected.",
                    )
                ),
            ),
            section("reports", "What it reports", bullets(_report(view, item) for item in listed(data.get("reports")))),
            facts([("Set on", stacked(view.links(data.get("systems"))) or "every system")]),
            section("first", "Read these first", bullets(first_line(view, reading, on) for reading in data["first"])),
            section(
                "mistaken",
                "What it does not say",
                bullets(view.prose(item) for item in listed(data.get("mistaken_for"))),
            ),
            section("symptoms", "Often comes with", cards(view, symptoms)),
            *(_by_report(view, record) if reports_of(record) else [_by_symptoms(view, record, symptoms)]),
        ],
    )


def _report(view: Uses, item: dict) -> Markup:
    """One reading with its answer and its place, or what no reading shows in words."""
    said = (
        [inline(view.link(item["reading"]), ": ", strong(item["shows"].replace("-", " ")))] if "reading" in item else []
    )
    said += [text(item["at"])] if "at" in item else []
    said += [view.prose(item["words"])] if "words" in item else []
    return joined(said, "; ")


def _by_report(view: Uses, record: Record) -> list[Markup]:
    """The causes that may show what the code reports, and what parts them."""
    fitting = fits(view, record)
    return [
        section("splits", "What splits the causes", split_table(view, record, fitting)),
        section("faults", "Faults that show what it reports", cause_list(view, record, fitting)),
    ]


def _by_symptoms(view: Uses, record: Record, symptoms: list[Record]) -> Markup:
    """The causes of what the driver feels, of a code that reports no reading of this book."""
    here = {row.fault for system in _systems(view, record) for row in view.matrices[system].rows}
    faults = {fault.id: fault for symptom in symptoms for fault in causes(view, symptom.id) if fault.id in here}
    about = "No reading of this book is what this code reports. These are the causes of what often comes with it; the code rules none of them in or out. "
    judged = "How common a fault is, is a judgement. "
    lists = _faults(view, list(faults.values()))
    return (
        section("faults", "Faults that are felt that way", para(about), lists, para(small(judged, OUTSIDE)))
        if faults
        else EMPTY
    )


def _systems(view: Uses, record: Record) -> list[str]:
    """The systems that a code is for: of those that it names, or of all, those on which most of its first readings can be taken."""
    counts = {s: len(set(record.data["first"]) & set(view.matrices[s].healthy)) for s in view.systems_of(record)}
    return [s for s, count in counts.items() if count == max(counts.values())]


def _faults(view: Uses, faults: list[Record]) -> Markup:
    """Links by how common a fault is; only the common ones stand open where they are many."""
    by = commonness(faults)
    lists = {how: bullets(view.link(f.id) for f in those) for how, those in by.items()}
    if len(faults) <= MOST_OPEN:
        return blocks(*(blocks(para(strong(how.capitalize(), ":")), those) for how, those in lists.items() if those))
    return blocks(
        lists["common"],
        folds((f"faults-{how}", how.capitalize(), str(len(by[how])), lists[how]) for how in by if how != "common"),
    )


def index(view: Uses) -> str:
    """Codes in their order, by their first three signs."""
    return index_page(
        "codes", "What the codes say, what they do not say, and what to read first.", grouped(view, ranges(view))
    )


def ranges(view: Uses) -> list[tuple[str, str, list[Record]]]:
    """(anchor, heading, codes) for each first three signs, few together with those before them: "P0100 to P0193"."""
    ranked = sorted(view.live("codes"), key=lambda r: r.data["code"])
    hundreds = Counter(r.data["code"][:3] for r in ranked)
    groups: dict[str, list[Record]] = {}
    start = ""
    for record in ranked:
        here = record.data["code"][:3]
        if here != start[:3] and (here[:2] != start[:2] or hundreds[here] >= FEW):
            start = here
        groups.setdefault(start, []).append(record)
    return [
        (
            start.lower(),
            f"{those[0].data['code']} to {those[-1].data['code']}" if len(those) > 1 else those[0].data["code"],
            those,
        )
        for start, those in groups.items()
    ]
