"""Text from a record is shown as it was written, whatever is in it (the CommonMark and HTML standards name the signs)."""

from __future__ import annotations

import html as entities
import re

import markdown
import pytest
from hypothesis import given
from hypothesis import strategies as st
from selectolax.lexbor import LexborHTMLParser

from bayleaf.pages.building.blocks import box, bullets, heading, para, table
from bayleaf.pages.building.inline import link, strong
from bayleaf.pages.building.text import Markup, plain, prose, text
from tests.pages.shown import extensions, spoken

HOSTILE = [
    "<script>alert(1)</script>",
    "</title><script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    '"><svg onload=alert(1)>',
    "[click](javascript:alert(1))",
    "![x](http://example.org/x.png)",
    "<http://example.org>",
    "http://example.org",
    "a@example.org",
    "# not a heading",
    "1. not a list",
    "- not a list",
    "> not a quote",
    "| not | a | table |",
    "---",
    "***bold***",
    "__bold__",
    "`code`",
    "```\ncode",
    "    code",
    "\tcode",
    "a  b",
    " a ",
    "a\nb",
    "a\r\n\r\nb",
    "a\\*b",
    "{: .x onclick=y }",
    "{ #top }",
    "[TOC]",
    "[[rail]",
    "![[x]]",
    "!!! danger",
    "&lt;b&gt;",
    "&#60;b&#62;",
    "&amp;",
    "{{ page.title }}",
    "{% raw %}",
    "*[x]: y",
    "[^1]",
    "a\u2028b",
    "x" * 300 + "<b>",
    "Ω µ ° é 漢 🚗",
    "\u00a0a\u3000b",
    "$x$",
    "@/index.md",
    "](@/index.md)",
    '"@/index.md"',
]


@pytest.mark.parametrize("value", HOSTILE)
def test_a_hostile_text_is_shown_as_it_was_written_in_every_place(value):
    for block in places(value):
        tree = LexborHTMLParser(markdown.markdown(block, extensions=extensions()))
        shown = tree.body.text(separator="")
        assert spoken(value) in spoken(shown), block
        assert not tree.css("script, img, svg, a[href], [onerror], [onload], [onclick], code, blockquote, em"), block


@given(st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=60))
def test_any_text_is_shown_as_it_was_written(value):
    tree = LexborHTMLParser(markdown.markdown(f"x{text(value)}x", extensions=extensions()))
    assert spoken(tree.body.text(separator="")) == spoken(f"x{value}x")


@given(st.text(max_size=60))
def test_only_letters_digits_single_spaces_harmless_punctuation_and_foreign_letters_are_left_as_they_are(value):
    coded = re.sub("&#[0-9]+;", "", text(value))
    assert all(c in " ,.;()'%-" or c.isalnum() or c > "\xa0" for c in coded)
    assert "\n" not in text(value) and "  " not in text(value) and "www." not in text(value).lower()
    assert len(entities.unescape(text(value))) <= max(1, len(value))


def test_our_own_markup_passes_and_every_other_string_is_encoded():
    assert text(Markup("<b>")) == "<b>"
    assert text("<b>") == "&#60;b&#62;"
    assert Markup("<b>") + "<i>" == "<b>&#60;i&#62;"


def test_a_string_that_was_forgotten_is_encoded_by_the_builder():
    assert "<script>" not in "".join(map(str, places("<script>")))


def test_only_links_to_ids_are_markup_in_a_prose_field():
    def link(id: str, words: str) -> Markup:
        return Markup(f"<{id}|{words}>")

    assert prose("[[fuel-rail]], [[fuel-filter|the can]]*.", link) == "<fuel-rail|>, <fuel-filter|the can>&#42;."
    assert prose("[[Not An Id]] [[a|b|c]]", link) == text("[[Not An Id]] [[a|b|c]]")


def test_the_search_reads_the_words_of_a_link():
    assert plain("See [[fuel-rail]] and [[fuel-filter|the can]].", str.upper) == "See FUEL-RAIL and the can."


def places(value: str) -> list[str]:
    """The text in every kind of place that a page has for one."""
    return [
        para(value),
        f"# {text(value)} {{ #top }}",
        heading(2, "a", value),
        bullets([value]),
        para(strong(value)),
        box("x", para(value)),
        table((value, "b"), [(value, "c")]),
        link("index.md", value).replace('<a href="@/index.html">', "<b>").replace("</a>", "</b>"),
        para(value, css="x"),
    ]
