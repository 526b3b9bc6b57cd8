"""The search box as people use it, over file:// in a folder with a space and an accent, and over http."""

from __future__ import annotations

import threading
from functools import partial
from http.server import ThreadingHTTPServer

import pytest

from bayleaf.search import Entry
from bayleaf.site.serve import Handler
from tests.site.sample import sample

HOSTILE = "<img src=x onerror=alert(1)> & \"quoted\" 'too'"
BOX = "[data-md-component=search-query]"


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("primed rail", "Measure primed rail pressure"),
        ("43.5", "Measure primed rail pressure"),
        ("static", "Rail pressure, primed"),
        ("P0171", "P0171"),
        ("p01", "P0171"),
        ("0171", "P0171"),
        ("LEAN", "P0171"),
    ],
)
def test_a_typed_query_finds_its_page_first(visit, sample_site, typed, first):
    assert visit(sample_site / "index.html").search(typed)[0] == first


def test_text_put_in_without_a_key_is_searched_too(visit, sample_site):
    visitor = visit(sample_site / "codes" / "p0171.html")
    visitor.page.locator(BOX).click()
    visitor.page.locator(BOX).fill("static pressure")
    assert visitor.results()[0] == "Rail pressure, primed"


def test_pasted_text_is_searched_too(visit, sample_site):
    visitor = visit(sample_site / "index.html")
    visitor.page.locator(BOX).click()
    visitor.page.keyboard.insert_text("43.5")
    assert visitor.results() == ["Measure primed rail pressure"]


def test_a_result_leads_to_its_page_from_a_page_in_a_folder(visit, sample_site):
    visitor = visit(sample_site / "procedures" / "measure-primed-rail-pressure.html")
    visitor.search("p0171")
    visitor.page.locator(".md-search-result__link").first.click()
    visitor.page.wait_for_url("**/codes/p0171.html*")
    assert visitor.page.locator("h1").inner_text() == "P0171"


def test_a_result_says_its_kind_and_marks_what_was_typed(visit, sample_site):
    visitor = visit(sample_site / "index.html")
    visitor.search("static")
    item = visitor.page.locator(".md-search-result__item").first
    assert item.locator(".search-kind").inner_text() == "Reading"
    assert item.locator("mark").all_inner_texts() == ["static"]


def test_pages_with_more_of_the_words_come_first(visit, sample_site):
    assert visit(sample_site / "index.html").search("lean rail pressure")[-1] == "P0171"


def test_the_page_called_exactly_so_comes_first(visit, sample_site):
    assert visit(sample_site / "index.html").search("rail pressure primed")[0] == "Rail pressure, primed"


def test_nothing_found_says_so(visit, sample_site):
    visitor = visit(sample_site / "index.html")
    visitor.page.locator(BOX).click()
    visitor.page.locator(BOX).fill("zzz")
    visitor.page.get_by_text("No matching documents").wait_for()


def test_hostile_titles_are_shown_as_they_were_written(visit, make_site):
    entries = [Entry(HOSTILE, "codes/p0171.html", HOSTILE, (HOSTILE,), HOSTILE)]
    visitor = visit(make_site(sample(), entries) / "index.html")
    assert visitor.search("quoted") == [HOSTILE]
    assert visitor.page.locator(".search-kind").inner_text() == HOSTILE
    assert visitor.page.locator(".md-search-result__item img").count() == 0


def test_a_site_copied_without_its_index_says_that_it_cannot_search(visit, make_site):
    site = make_site(sample())
    (site / "assets" / "search-index.js").unlink()
    assert visit(site / "index.html").search("rail") == ["Search cannot work in this copy of the site"]


def test_the_search_works_from_a_server_too(visit, sample_site):
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Handler, directory=str(sample_site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        visitor = visit(f"http://127.0.0.1:{server.server_port}/codes/p0171.html")
        assert visitor.search("43.5") == ["Measure primed rail pressure"]
    finally:
        server.shutdown()
        server.server_close()
