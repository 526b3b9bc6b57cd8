"""The links at the top of a long page. Our own rules of layout; no outside source."""

from __future__ import annotations

import pytest

from bayleaf.pages.building.blocks import blocks, folds, numbered, para, section
from bayleaf.pages.building.contents import LONG, contents
from bayleaf.pages.building.index import MOST_OPEN
from bayleaf.pages.building.inline import span
from tests.pages.shown import parsed

WORDS = "x" * LONG


def led_to(tree) -> list[str]:
    return [link.attributes["href"].partition("#")[2] for link in tree.css(".bl-jump a")]


def anchors(*parts) -> list[str]:
    return led_to(parsed(f"---\ntitle: x\n---\n\n{contents('kind/id.md', parts)}\n"))


def test_a_long_page_leads_to_each_section_that_it_has_and_a_short_one_to_none():
    assert anchors(para("lead"), section("a", "A", WORDS), section("b", "B", ""), section("9 c", "C", "c")) == [
        "a",
        "a-9-c",
    ]
    assert anchors(section("a", "A", WORDS[LONG // 2 :]), section("b", "B", "b")) == []


def test_what_is_folded_makes_no_page_long():
    inner = folds([("in", "In", "", WORDS)])
    assert (
        anchors(section("a", "A", folds([("out", "Out", "", blocks(WORDS, inner, WORDS))])), section("b", "B", "b"))
        == []
    )


@pytest.mark.parametrize("guarded", [span("bl-signal bl-danger", "DANGER"), numbered(["one step"])])
def test_no_link_leads_past_a_caution_or_a_step_from_before_it(guarded):
    assert anchors(
        section("a", "A", WORDS),
        section("c", "C", guarded),
        section("n", "N", "n"),
        section("s", "S", guarded),
        section("b", "B", "b"),
    ) == ["b"]
    assert anchors(section("a", "A", WORDS), section("c", "C", guarded)) == []


@pytest.mark.parametrize(
    "address",
    [
        "symptoms/cranks-no-start",
        "systems/port-injection-return",
        "faults/regulator-stuck-high",
        "readings/charging-voltage",
        "calculators/regulator-rail-pressure",
        "jobs/van-12-weak-pump-or-strainer",
    ],
)
def test_every_kind_of_long_page_leads_to_all_its_sections(made, address):
    tree = parsed(made[f"{address}.md"])
    there = [h.attributes["id"] for h in tree.css("h2") if h.attributes["id"] not in ("demonstration", "see-also")]
    assert len(there) > 1 and led_to(tree) == there


def test_on_a_car_that_adds_cautions_the_top_leads_only_behind_them(view, made):
    layers = [r for r in view.live("systems") if r.data.get("brings", {}).get("cautions")]
    assert layers
    for layer in layers:
        assert not {"recognise", "brings"} & set(led_to(parsed(made[f"systems/{layer.id}.md"]))), layer.id


def test_no_caution_has_a_way_around_it(view, made):
    for caution in view.all("cautions"):
        assert not parsed(made[f"cautions/{caution.id}.md"]).css(".bl-jump"), caution.id
    assert not parsed(made["cautions/index.md"]).css(".bl-jump")


def test_a_list_of_many_entries_leads_to_each_letter_and_one_of_few_to_each_entry(view, made):
    for kind in ("terms", "quantities", "fuels", "acts"):
        entries, tree = view.all(kind), parsed(made[f"{kind}/index.md"])
        if len(entries) > MOST_OPEN:
            assert led_to(tree) == [
                r.id for i, r in enumerate(entries) if not i or r.title[0].upper() != entries[i - 1].title[0].upper()
            ]
        else:
            assert led_to(tree) == [r.id for r in entries]


def test_every_way_down_a_page_is_left_off_on_paper(made):
    bars = [(path, bar) for path, page in made.items() if path.endswith(".md") for bar in parsed(page).css(".bl-jump")]
    assert len(bars) > 300
    for path, bar in bars:
        assert "bl-screen" in bar.attributes["class"].split() and bar.tag == "nav" and bar.attributes["aria-label"], (
            path
        )
