"""Ids are found in fields, in names and in text, and rings of them are found."""

from __future__ import annotations

from bayleaf.checks.facts.cycles import cycles
from bayleaf.records.named import links_of
from tests.data import book_of


def test_ids_are_found_in_fields_names_and_text():
    book = book_of(
        {
            "faults": {
                "f": {
                    "part": "filter",
                    "summary": "See [[one]] and [[two|that]].",
                    "stages": {"a": {"r1": "low"}, "b": {"like": "a", "r2": ["low", "high"]}},
                    "felt_as": "none",
                    "mended_by": ["p", {"words": "By hand."}],
                    "proved_by": {"none": "No way."},
                }
            }
        }
    )
    links = links_of(book.get("f"))
    assert {(link.id, link.key, link.prose) for link in links} == {
        ("filter", False, False),
        ("r1", True, False),
        ("r2", True, False),
        ("p", False, False),
        ("one", False, True),
        ("two", False, True),
    }


def test_a_cycle_is_found_once():
    assert list(cycles({"a": ["b"], "b": ["c"], "c": ["a"], "d": ["a", "d"]})) == [["a", "b", "c"], ["d"]]
    assert list(cycles({"a": ["b", "c"], "b": ["c"], "c": []})) == []


def test_a_long_chain_needs_no_recursion():
    assert list(cycles({str(n): [str(n + 1)] for n in range(50_000)})) == []


def test_a_record_without_text_has_no_links():
    assert links_of(book_of({"terms": {"t": {"title": "T", "means": "x"}}}).get("t")) == []
