"""The pages over many records: made from the records alone, complete, and found by the search."""

from __future__ import annotations

from bayleaf.pages import entries
from bayleaf.pages.kinds.overviews import CLASS, INSTRUMENTS
from bayleaf.pages.parts.proof import proof
from bayleaf.pages.parts.steps import unfold
from tests.pages.shown import block, parsed, real_book, seen


def test_the_class_sees_every_calculator_that_says_what_to_show(view, made):
    taught = [r for r in view.live("calculators") if "teaches" in r.data]
    tree = parsed(made[CLASS])
    assert len(taught) == len(tree.css("figure.bl-figure")) == len(tree.css("h2")) >= 8
    for record in taught:
        assert block(view.prose(record.data["teaches"])) in seen(made[CLASS])
        assert [h.text() for h in parsed(made[f"calculators/{record.id}.md"]).css("h2")].count("For the class") == 1


def test_a_teacher_finds_the_three_charts_that_every_course_needs(view):
    # Asked for by those who teach: injectors by layout, boost by altitude, what a volt lost costs. No outside source.
    for id in ("injector-pressure-layouts", "pressure-ratio-altitude", "voltage-drop-pump"):
        assert (
            view.calculators[id].chart
            and view.calculators[id].table
            and "teaches" in view.book.of("calculators")[id].data
        )


def test_every_procedure_with_something_to_prove_is_on_the_page_of_instruments(view, made):
    proving = [r for r in view.live("procedures") if proof(view, unfold(view, r), view.systems_of(r))]
    anchors = {one.attributes["id"] for one in parsed(made[INSTRUMENTS]).css("details")}
    assert len(proving) > 20 and anchors == {r.id for r in proving}


def test_both_pages_are_reached_from_more_and_from_the_search(made):
    links = {a.attributes["href"] for a in parsed(made["more/index.md"]).css("a")}
    assert {"class.html", "instruments.html"} <= links
    assert {"more/class.html", "more/instruments.html"} <= {entry.url for entry in entries(real_book())}
