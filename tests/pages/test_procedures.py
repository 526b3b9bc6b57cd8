"""The procedure page: cautions stand before what they guard, in the document, and nothing that is needed is left out."""

from __future__ import annotations

import pytest

from bayleaf.pages.building.uses import Uses
from bayleaf.pages.kinds.procedures import readings_of
from bayleaf.pages.parts.steps import cautions_of, unfold, walk
from bayleaf.records import listed
from tests.data import book_of
from tests.pages.shown import parsed, real_book, seen, spoken

PROCEDURES = sorted(real_book().of("procedures"))


@pytest.mark.parametrize("id", PROCEDURES)
def test_each_caution_of_a_step_stands_before_the_step_in_the_document(id, made, view):
    steps = list(walk(unfold(view, view.book.of("procedures")[id])))
    items = parsed(made[f"procedures/{id}.md"]).css("ol.bl-steps li:has(> p.bl-do)")
    assert len(items) == len(steps)
    for item, step in zip(items, steps):
        children = [child for child in item.iter() if child.tag in ("aside", "p")]
        asides = [child for child in children if child.tag == "aside"]
        shown = [spoken(child.css_first(".bl-alert-title").text()) for child in asides]
        wanted = [f"{view.get(c).data['signal']} {view.title(c)}" for c in listed(step.data.get("cautions"))]
        assert sorted(shown) == sorted(map(spoken, wanted))
        assert children[: len(asides)] == asides, "a caution after its step"
        assert "do" not in step.data or spoken(view.plain(step.data["do"])) in spoken(item.text())


@pytest.mark.parametrize("id", PROCEDURES)
def test_every_caution_is_named_before_the_first_step_the_inherited_ones_too(id, made, view):
    record = view.book.of("procedures")[id]
    before = parsed(made[f"procedures/{id}.md"]).body.text(separator=" ").split("Steps")[0]
    ids = cautions_of(unfold(view, record))
    for other in listed(record.data["inherits"]):
        ids += cautions_of(unfold(view, view.book.of("procedures")[other]))
    for caution in ids:
        assert spoken(view.title(caution)) in spoken(before)
        assert view.get(caution).data["signal"] in before


@pytest.mark.parametrize("id", PROCEDURES)
def test_the_sections_stand_in_the_order_of_the_work(id, made):
    order = ["cautions", "need", "steps", "bands", "results", "misleads", "next", "customer"]
    there = [
        node.attributes["id"]
        for node in parsed(made[f"procedures/{id}.md"]).css("h2")
        if node.attributes.get("id") in order
    ]
    assert there == sorted(there, key=order.index)
    assert there[there.index("need") :][:2] == ["need", "steps"]


def test_every_reading_taken_has_a_line_to_write_it_on_and_a_place_for_the_makers_figure(made, view):
    for id in PROCEDURES:
        steps = unfold(view, view.book.of("procedures")[id])
        tree = parsed(made[f"procedures/{id}.md"])
        assert len(tree.css("ol.bl-steps .bl-blank")) == sum("takes" in step.data for step in walk(steps))
        measured = [
            r
            for r in readings_of(steps)
            if view.quantity(r) and view.get(r).data.get("purpose", "diagnosis") == "diagnosis"
        ]
        assert not measured or "Maker's figure" in seen(made[f"procedures/{id}.md"])


def test_a_followed_procedure_is_unfolded_and_a_circle_ends():
    step = {"do": "Switch on."}
    book = book_of(
        {
            "procedures": {
                "a": {"title": "A", "steps": [{"follow": "b"}, step]},
                "b": {"title": "B", "steps": [{"follow": "a"}, step]},
            }
        }
    )
    view = Uses(book)
    steps = unfold(view, book.of("procedures")["a"])
    assert [s.data for s in walk(steps)] == [{"follow": "b"}, {"follow": "a"}, step, step]
    assert [s.record.id for s in walk(steps)] == ["a", "b", "b", "a"]


@pytest.mark.parametrize("id", PROCEDURES)
def test_the_top_of_a_sheet_leads_to_what_a_reading_means_and_never_past_the_cautions_to_the_work(id, made):
    # Our own rule: whoever works comes by the cautions and the steps, so no link at the top leads to either or between them.
    tree = parsed(made[f"procedures/{id}.md"])
    behind = [h.attributes["id"] for h in tree.css("h2")]
    behind = behind[behind.index("steps") + 1 :]
    led_to = [link.attributes["href"].partition("#")[2] for link in tree.css(".bl-jump a")]
    assert set(led_to) <= set(behind)
    assert {"bands", "results"} & set(behind) <= set(led_to)


def test_of_many_greatest_pressures_the_greatest_is_told_and_on_which_system(made):
    """A tank is drained on every system; fifteen figures of other cars would hide the one that counts."""
    everywhere, one = (seen(made[f"procedures/{id}.md"]) for id in ("drain-fuel-tank", "measure-idle-rail-pressure"))
    assert "150 psi (1030 kPa)" in everywhere and "on Gasoline direct injection, feed side" in everywhere
    assert "Other systems hold this or less" in everywhere and "Other systems hold this or less" not in one
    assert "130 psi (896 kPa)" in one
