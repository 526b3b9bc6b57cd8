"""The builder: front matter, addresses, and blocks that are not there when they would be empty."""

from __future__ import annotations

import html

from bayleaf.pages.building.blocks import blocks, bullets, facts, heading, numbered, para, section, table, tiles
from bayleaf.pages.building.inline import EMPTY, link
from bayleaf.pages.building.page import page
from tests.pages.shown import front, parsed, seen


def test_the_title_in_the_front_matter_is_encoded_text_and_nothing_else_of_a_record_is_there():
    made = page("faults/x.md", 'A "title": </title><script>', para("body"))
    assert set(front(made)) == {"title", "search"}
    assert "<" not in front(made)["title"] and html.unescape(front(made)["title"]) == 'A "title": </title><script>'


def test_an_astral_character_in_a_title_survives_the_front_matter():
    assert front(page("index.md", "🚗 é"))["title"] == "🚗 é"


def test_addresses_are_relative_to_the_page_and_need_no_root():
    way = link("readings/rail-pressure.md", "Rail pressure")
    assert 'href="../readings/rail-pressure.html"' in page("faults/x.md", "t", para(way))
    assert 'href="readings/rail-pressure.html"' in page("index.md", "t", para(way))
    assert 'href="rail-pressure.html#bands"' in page("readings/x.md", "t", link("readings/rail-pressure.md#bands", "x"))
    assert 'href="../../index.html"' in page("a/b/c.md", "t", para(link("index.md", "Home")))


def test_text_that_looks_like_an_address_of_ours_is_left_alone():
    assert seen(page("faults/x.md", "t", para('<a href="@/index.md">'))).startswith('<a href="@/index.md">')


def test_a_section_without_anything_in_it_is_not_there():
    assert (
        section("a", "Title", EMPTY, bullets([]), table(("a",), []), facts([("a", "")]), tiles([]), numbered([]))
        == EMPTY
    )


def test_an_anchor_is_made_of_letters_digits_and_hyphens_only():
    assert heading(2, 'x" onclick="y', "t").strip().endswith("{ #a-x--onclick--y }")


def test_a_list_in_boxes_keeps_its_order_and_its_blocks():
    tree = parsed(page("x/y.md", "t", numbered([blocks(para("one"), bullets(["a", "b"])), para("two")])))
    items = tree.css("ol.bl-steps > li")
    assert [" ".join(item.text(separator=" ").split()) for item in items] == ["one a b", "two"]
    assert len(items[0].css("ul > li")) == 2
