"""Two pages over many records: what to show a class, and which instrument proves which band."""

from __future__ import annotations

from bayleaf.pages.building.blocks import blocks, folds, heading, para, section
from bayleaf.pages.building.contents import bar
from bayleaf.pages.building.frame import crumbs
from bayleaf.pages.building.inline import link, small
from bayleaf.pages.building.page import page
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.parts.proof import ABOUT, other_gauge, proof_tables
from bayleaf.pages.parts.steps import unfold
from bayleaf.pages.pictures.chart import chart

CLASS, INSTRUMENTS = "more/class.md", "more/instruments.md"
TITLES = {CLASS: "For the class", INSTRUMENTS: "Which instrument proves which band"}
REMARKS = {
    CLASS: "charts and tables to project, each with what to show",
    INSTRUMENTS: "every instrument of the book against the bands of each procedure",
}
SYNONYMS = {
    CLASS: ("teacher", "lesson", "projector", "training"),
    INSTRUMENTS: ("gauge accuracy", "is my gauge good enough", "which gauge"),
}


def for_class(view: Uses) -> str:
    """The calculators whose record says what to show a class, each with its chart."""
    shown = [r for r in view.live("calculators") if "teaches" in r.data and r.id in view.calculators]
    parts = [
        section(
            r.id,
            view.link(r.id),
            para(view.prose(r.data["teaches"])),
            chart(view.calculators[r.id]),
            para(
                link(f"calculators/{r.id}.md#table", "Its table"),
                " · ",
                link(f"calculators/{r.id}.md#work-out", "Work it out with the class"),
                " · ",
                link(f"calculators/{r.id}.md#fails", "Where it fails"),
                css="bl-all",
            ),
        )
        for r in shown
    ]
    about = "Charts and tables to project: what each is good for in a lesson, and where it stops being true. Every chart prints."
    return page(
        CLASS,
        TITLES[CLASS],
        crumbs(under_more=True),
        heading(1, "top", TITLES[CLASS]),
        para(about, css="bl-lead"),
        bar(CLASS, [(r.id, r.title) for r in shown]),
        *parts,
    )


def instruments(view: Uses) -> str:
    """For each procedure that reads an instrument, what every instrument of the book proves about its bands."""
    parts = []
    for record in view.live("procedures"):
        tables = proof_tables(view, unfold(view, record), view.systems_of(record))
        if tables:
            parts.append(
                (
                    record.id,
                    record.title,
                    "",
                    blocks(para(link(f"procedures/{record.id}.md", "To its steps"), css="bl-all"), tables),
                )
            )
    about = "Before a gauge is connected: what it can prove about each band, and what it never can."
    return page(
        INSTRUMENTS,
        TITLES[INSTRUMENTS],
        crumbs(under_more=True),
        heading(1, "top", TITLES[INSTRUMENTS]),
        para(about, css="bl-lead"),
        para(small(ABOUT, other_gauge(view))),
        folds(parts),
    )
