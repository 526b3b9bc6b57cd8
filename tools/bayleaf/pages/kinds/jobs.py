"""An invented job of the demonstration: complaint, readings with their verdicts, and where they lead."""

from __future__ import annotations

from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.judgement import Judgement
from bayleaf.pages.building.amounts import INVENTED, amount, band
from bayleaf.pages.building.blocks import bullets, facts, para, section, table, tiles
from bayleaf.pages.building.frame import record_page, shown
from bayleaf.pages.building.index import index_page
from bayleaf.pages.building.inline import EMPTY, inline, joined, lines, small, stacked, strong
from bayleaf.pages.building.text import Markup, text
from bayleaf.pages.building.uses import Uses
from bayleaf.records import Record, listed, mapped

ABOUT = "Shares follow how common each fault is, how it is felt and what was read: a judgement. A complaint weighs and never clears."


def page(view: Uses, record: Record) -> str:
    """The page of one job, marked as invented at its top."""
    data = record.data
    car = mapped(data.get("car"))
    judgement = judge(view.book, record)
    return record_page(
        view,
        record,
        [
            facts(
                [
                    (
                        "Car",
                        view.link(data["vehicle"]) if "vehicle" in data else stacked(view.links(car.get("systems"))),
                    ),
                    ("Complaint", stacked(view.links(data.get("felt"))) or "none"),
                    ("Codes", stacked(view.links(data.get("codes")))),
                    ("Before it", stacked(view.links(data.get("history")))),
                    ("In the shop", stacked(view.links(data.get("shop")))),
                    (
                        "Intermittent",
                        "yes: every reading says whether the fault was there" if data.get("comes_and_goes") else "",
                    ),
                ]
            ),
            section("maker", "The maker's figures", _maker(view, record)),
            section("readings", "Readings", _readings(view, record, judgement)),
            *(_outcome(view, judgement) if judgement else []),
            section("truth", "What it really was", para(joined(view.links(data.get("true_cause"))))),
        ],
    )


def _maker(view: Uses, record: Record) -> Markup:
    rows = []
    for reading, limits in mapped(record.data.get("maker_bands")).items():
        origin = strong(INVENTED) if limits.get("invented") else text(limits.get("looked_up", ""))
        rows.append(
            (view.link(reading), strong(band(view, record, ("maker_bands", reading), view.quantity(reading))), origin)
        )
    return table(("Reading", "Limits", "Where it comes from"), rows)


def _readings(view: Uses, record: Record, judgement: Judgement | None) -> Markup:
    verdicts = {taken.places[-1]: taken for taken in judgement.taken if not taken.computed} if judgement else {}
    rows: list[tuple[object, ...]] = []
    for i, entry in enumerate(listed(record.data.get("readings"))):
        if "repaired" in entry:
            rows.append((inline("repaired: ", view.link(entry["repaired"])), "", "", ""))
            continue
        taken = verdicts.get(i)
        verdict = lines([strong(taken.verdict.kind), small(taken.verdict.words)]) if taken else EMPTY
        rows.append(
            (
                _reading(view, entry["reading"], entry.get("which")),
                _said(view, record, i),
                view.link(entry["instrument"]) if "instrument" in entry else "",
                verdict,
            )
        )
    rows += [
        (
            inline(_reading(view, taken.reading, taken.which), small(" worked out")),
            taken.said,
            "",
            lines([strong(taken.verdict.kind), small(taken.verdict.words)]),
        )
        for taken in (judgement.taken if judgement else ())
        if taken.computed
    ]
    return table(("Reading", "Found", "With", "Verdict"), rows)


def _reading(view: Uses, reading: str, which: int | str | None) -> Markup:
    """The reading, and of which cylinder, bank or connection it was taken."""
    if which is None:
        return view.link(reading)
    each = view.book.of("readings")[reading].data.get("each", "")
    return inline(view.link(reading), ", ", each, " ", view.link(which) if isinstance(which, str) else which)


def _said(view: Uses, record: Record, i: int) -> Markup:
    entry = record.data["readings"][i]
    if "value" in entry:
        return amount(view, record, ("readings", i), view.quantity(entry["reading"]))
    if "answer" in entry:
        return shown(entry["answer"])
    return inline("cannot be taken: ", entry["cannot"]) if "cannot" in entry else text("not reached")


def _outcome(view: Uses, judgement: Judgement) -> list[Markup]:
    left = [
        inline(
            view.link(item.fault),
            small(
                f" {round(100 * item.share)} in 100",
                inline("; ", joined(shown(s) for s in item.stages)) if item.stages else "",
            ),
        )
        for item in judgement.left
    ]
    cleared = [
        inline(view.link(item.fault), small(" by "), joined(view.links(list(item.reasons)), " and "))
        for item in judgement.contradicted
    ]
    besides = [inline(view.link(item.fault), small(f" {round(100 * item.share)} in 100")) for item in judgement.besides]
    outside = para(f"A cause outside this book: {round(100 * judgement.outside)} in 100.")
    pairs = [joined(view.links(list(pair.faults)), " with ") for pair in judgement.pairs]
    doubts = [
        inline(view.link(d.of), small(" doubted brings back "), joined(view.links(list(d.brings))))
        for d in judgement.doubts
    ]
    alone = EMPTY if left else para(strong("No single fault of this book fits all the readings."))
    return [
        section("left", "What fits every reading", alone, bullets(left), outside, para(small(ABOUT))),
        section("besides", "Fits, but is not felt like this or is rare", bullets(besides)),
        section("doubts", "If one reading is doubted", bullets(doubts)),
        section("pairs", "Two faults at once that would fit", bullets(pairs)),
        section("cleared", "Contradicted, and by what", bullets(cleared)),
    ]


def index(view: Uses) -> str:
    """All jobs with their complaint."""
    listing = tiles((view.address(j.id), j.title, view.plain(j.data.get("summary"))) for j in view.live("jobs"))
    return index_page("jobs", "INVENTED jobs of the demonstration shop: readings in, verdicts and faults out.", listing)
