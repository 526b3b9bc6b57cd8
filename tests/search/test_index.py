"""The packed index: what goes in is what a reader of it finds."""

from __future__ import annotations

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bayleaf.search import Entry, build_index, client, words_of
from bayleaf.search.index import DIGITS

RAIL = Entry("Rail pressure, primed", "readings/rail-pressure-primed.html", "Reading", ("43.5 psi",), "At the rail.", 2)
CODE = Entry("P0171", "codes/p0171.html", "Code", ("lean",), "Too lean, bank 1.")


def opened(script: str) -> dict:
    """The data in the script; JSON text after `var bayleafSearchIndex =`."""
    return json.loads(re.fullmatch(r"var bayleafSearchIndex = (.*);\n", script, re.DOTALL)[1])


def unpacked(text: str) -> list[tuple[int, int]]:
    """Postings read back, written apart from the code that packs them: five bits a digit, lowest first."""
    numbers, value, shift = [], 0, 0
    for digit in map(DIGITS.index, text):
        value |= (digit & 31) << shift
        shift += 5
        if digit < 32:
            numbers.append(value)
            value = shift = 0
    pages, page = [], 0
    for number in numbers:
        page += number >> 2
        pages.append((page, number & 3))
    return pages


def found(data: dict, word: str) -> list[tuple[int, int]]:
    return unpacked(data["postings"].split(" ")[data["terms"].split(" ").index(word)])


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("43.5 psi", ["43.5", "psi"]),
        ("Code P0171.", ["code", "p0171"]),
        ("gauge 0-100", ["gauge", "0", "100"]),
        ("Vergaser Düse, d'air", ["vergaser", "duse", "d", "air"]),
        ("ratio 14.7:1 at 2.5bar", ["ratio", "14.7", "1", "at", "2.5bar"]),
        ("end. 12. next", ["end", "12", "next"]),
        ("", []),
    ],
)
def test_decimals_and_codes_stay_whole(text, words):
    assert words_of(text) == words


def test_a_word_leads_to_its_pages_with_the_strongest_field():
    data = opened(build_index([RAIL, CODE]))
    assert found(data, "rail") == [(0, 3)]  # in the title and the summary: the title counts
    assert found(data, "43.5") == [(0, 2)]
    assert found(data, "lean") == [(1, 2)]
    assert found(data, "bank") == [(1, 1)]


@given(st.lists(st.text(max_size=30), max_size=60))
def test_every_word_of_every_title_is_found_again(titles):
    data = opened(build_index(Entry(title, f"terms/{n}.html", "Term") for n, title in enumerate(titles)))
    for number, title in enumerate(titles):
        for word in words_of(title):
            assert (number, 3) in found(data, word)


def test_postings_far_apart_survive_the_packing():
    entries = [Entry("relay" if n in (0, 4000) else "x", f"terms/{n}.html", "Term") for n in range(4001)]
    assert found(opened(build_index(entries)), "relay") == [(0, 3), (4000, 3)]


def test_no_title_can_end_a_script_element():
    assert "<" not in build_index([Entry("</script><script>", "x.html", "<b>", ("<",), "<!--")])


def test_an_empty_book_gives_an_empty_index():
    assert opened(build_index([])) == {"kinds": [], "pages": [], "terms": "", "postings": ""}


def test_a_weight_out_of_range_is_named():
    with pytest.raises(ValueError, match=r"x\.html: weight 10 is not from 1 to 9"):
        build_index([Entry("x", "x.html", "Term", weight=10)])


def test_equal_entries_give_equal_bytes():
    assert build_index([RAIL, CODE]) == build_index([RAIL, CODE])


def test_the_client_asks_no_other_host():
    assert not re.search(r"https?:|//[a-z]+\.", client())
