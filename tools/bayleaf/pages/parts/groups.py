"""What the readings of a system can and cannot tell apart, in words and figures."""

from __future__ import annotations

from bayleaf.diagnosis.faults.isolate import Figures
from bayleaf.pages.building.blocks import blocks, bullets, para, table
from bayleaf.pages.building.index import long
from bayleaf.pages.building.inline import joined, small, strong
from bayleaf.pages.building.text import Markup
from bayleaf.pages.building.uses import Uses

ABOUT = (
    "Worked out from the faults of this book: it takes every reading as taken, the maker's figures as known and one fault at a time. "
    "Shares are weighted by how common a fault is, a judgement, in the manner of IEEE 1522 (recalled)."
)


def groups(view: Uses, system: str) -> Markup:
    """Faults that may be left together, those no reading surely shows, and readings that say the same."""
    isolation = view.isolations.get(system)
    if isolation is None or not isolation.whole.weight:
        return Markup("")
    whole = isolation.whole
    parts = [para(_figures(whole)), bullets(joined(view.links(list(group)), " · ") for group in whole.groups)]
    if whole.unseen:
        parts += [para(strong("No reading is sure to show: "), joined(view.links(list(whole.unseen))), ".")]
    if isolation.same:
        parts += [
            para(strong("These readings always say the same, so one is enough:")),
            bullets(joined(view.links(list(same)), " = ") for same in isolation.same),
        ]
    return blocks(*parts, para(small(ABOUT)))


def _figures(figures: Figures) -> str:
    return (
        f"{_share(figures.detected)} of the fault weight is surely shown by some reading; of that, {_share(figures.isolated[1])} is pinned "
        f"to one fault and {_share(figures.isolated[3])} to three or fewer. Faults that may be left together:"
    )


def symptom_figures(view: Uses, system: str) -> Markup:
    """The same figures for each symptom."""
    isolation = view.isolations.get(system)
    rows = (
        [
            (view.link(symptom), _share(f.detected), _share(f.isolated[1]), _share(f.isolated[3]))
            for symptom, f in isolation.symptoms.items()
        ]
        if isolation
        else []
    )
    return long(
        len(rows),
        "all-complaints",
        "complaints",
        table(("Complaint", "Surely shown", "Pinned to one", "To three or fewer"), rows, css="bl-shares"),
    )


def _share(share: float) -> str:
    return f"{round(100 * share)} %"
