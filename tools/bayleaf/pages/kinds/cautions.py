"""Cautions: the box before the work, the short box before a step, the one line of an inherited one, and their pages."""

from __future__ import annotations

from collections.abc import Iterable

from bayleaf.pages.building.amounts import basis
from bayleaf.pages.building.blocks import box, bullets, para, section
from bayleaf.pages.building.frame import record_page
from bayleaf.pages.building.index import cards, index_page
from bayleaf.pages.building.inline import inline, joined, small, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.tasks import work
from bayleaf.records import Record, listed, mapped

SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")

# What the signal words mean by ANSI Z535.6, in words of our own (recalled).
MEANINGS = {
    "DANGER": "will kill or seriously injure if it is not avoided",
    "WARNING": "could kill or seriously injure if it is not avoided",
    "CAUTION": "could injure lightly or moderately if it is not avoided",
    "NOTICE": "could damage the car or the equipment; nobody is hurt",
}


def by_severity(view: Uses, ids: Iterable[str]) -> list[Record]:
    """The cautions of these ids, each once, the worst first."""
    records = [view.get(id, "cautions") for id in dict.fromkeys(ids)]
    return sorted((r for r in records if r), key=lambda r: SIGNALS.index(r.data["signal"]))


def _box(record: Record, *parts: object) -> Markup:
    signal = record.data["signal"]
    return box(f"bl-alert bl-{signal.lower()}", *parts, tag="aside", label=f"{signal}: {record.title}")


def _signal(view: Uses, record: Record, linked: bool = True) -> Markup:
    title = view.link(record.id) if linked else text(record.title)
    return para(
        Markup('<span class="bl-signal">'),
        record.data["signal"],
        Markup("</span> "),
        strong(title),
        css="bl-alert-title",
    )


def full(view: Uses, record: Record, linked: bool = True) -> Markup:
    """The whole caution: danger, consequence, and how it is avoided."""
    data = record.data
    return _box(
        record,
        _signal(view, record, linked),
        para(joined([view.prose(data["danger"]), view.prose(data["consequence"])], " ")),
        bullets(view.prose(line) for line in data["avoid"]),
    )


def short(view: Uses, record: Record) -> Markup:
    """The caution as it stands before a step: what it is, and how it is avoided."""
    return _box(record, _signal(view, record), bullets(view.prose(line) for line in record.data["avoid"]))


def again(view: Uses, record: Record) -> Markup:
    """The caution before a later step of the same sheet: the same words in fewer lines."""
    return _box(
        record,
        _signal(view, record),
        para(joined((view.prose(item) for item in record.data["avoid"]), " "), css="bl-again"),
    )


def line(view: Uses, record: Record) -> Markup:
    """The caution in one list item."""
    signal = record.data["signal"]
    return inline(
        Markup(f'<span class="bl-signal bl-{signal.lower()}">'),
        signal,
        Markup("</span> "),
        view.link(record.id),
        ". ",
        joined((view.prose(item) for item in record.data["avoid"]), " "),
    )


def page(view: Uses, record: Record) -> str:
    """The page of one caution."""
    data = record.data
    layers = [r for r in view.live("systems") if record.id in listed(mapped(r.data.get("brings")).get("cautions"))]
    # No links at the top: nobody is led past what the page is there to say.
    return record_page(
        view,
        record,
        [
            full(view, record, linked=False),
            para(
                small(
                    f"{data['signal']}: it {MEANINGS[data['signal']]} (ANSI Z535.6, recalled). Basis: ",
                    basis(view, data.get("basis")),
                    ".",
                )
            ),
            section(
                "hazards",
                "Guards against",
                bullets(
                    inline(view.link(h), ". ", view.prose(entry.data.get("summary")))
                    for h in data["hazards"]
                    if (entry := view.get(h))
                ),
            ),
            section("layers", "Brought by every car with", bullets(view.link(r.id) for r in layers)),
            section(
                "shown",
                "Shown on",
                work(view, [r for r in view.referrers.get(record.id, []) if r.kind == "procedures"]),
            ),
        ],
        with_contents=False,
    )


def index(view: Uses) -> str:
    """All cautions by signal word."""
    parts = []
    for signal in SIGNALS:
        these = [r for r in view.live("cautions") if r.data["signal"] == signal]
        if these:
            parts.append(
                section(signal.lower(), signal, para("It ", MEANINGS[signal], "."), cards(view, these, "danger"))
            )
    return index_page(
        "cautions",
        "What can hurt a person or damage a car, the worst first. Each is shown before the step it guards.",
        *parts,
    )
