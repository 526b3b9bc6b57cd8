"""The whole tree: every page has one title and a way back, every link arrives, every number says where it comes from."""

from __future__ import annotations

import json
import posixpath
import re

import pytest

from bayleaf.pages import entries, pages
from bayleaf.pages.building.text import text
from bayleaf.pages.building.view import address_of
from bayleaf.records import KIND, KINDS
from bayleaf.records.named import bases_of
from tests.data import book_of
from tests.pages.shown import ROOT, front, parsed, real_book, seen

RULES = [
    {
        "code": "UNIT-1",
        "level": "error",
        "title": "A unit",
        "what": "w",
        "why": "y",
        "mend": "m",
        "excusable": False,
        "file": "systems/x.yaml",
        "good": "  unit: psi",
        "bad": "  unit: [psi]",
    }
]


@pytest.fixture(scope="module")
def made():
    schemas = {p.name.split(".")[0]: json.loads(p.read_text()) for p in (ROOT / "schemas").glob("*.json")}
    return pages(real_book(), RULES, schemas)


@pytest.fixture(scope="module")
def trees(made):
    return {path: parsed(text) for path, text in made.items() if path.endswith(".md")}


def test_every_page_has_one_title_and_all_but_home_a_way_back(made, trees):
    for path, tree in trees.items():
        assert len(tree.css("h1")) == 1, path
        assert front(made[path])["title"], path
        assert path == "index.md" or tree.css_first("nav.bl-crumbs a").attributes["href"] == posixpath.relpath(
            "index.html", posixpath.dirname(path)
        ), path


def test_only_headings_are_left_for_the_engine_to_parse(made):
    # CommonMark 0.31, 4.6: a line that begins with a tag of a block begins HTML, which is passed on as it is.
    begins = re.compile(
        r"#{1,3} [^\n]+ \{ #[A-Za-z][A-Za-z0-9-]* \}\Z|</?(?:p|div|nav|ul|ol|li|dl|dt|table|tr|t?body|aside|details|figure)\b"
    )
    for path, page in made.items():
        for line in page.split("\n---\n", 1)[1].splitlines() if path.endswith(".md") else ():
            assert not line or begins.match(line), (path, line)


def test_every_link_leads_to_a_page_and_to_a_place_in_it(made, trees):
    ids = {path: {n.attributes["id"] for n in tree.css("[id]")} for path, tree in trees.items()}
    for path in trees:
        for link in (a.attributes["href"] for a in trees[path].css("a")):
            address, _, place = link.replace(".html", ".md").partition("#")
            target = posixpath.normpath(posixpath.join(posixpath.dirname(path), address))
            assert target in made, (path, link)
            assert not place or place in ids[target], (path, link)


def test_every_sound_record_has_its_page_and_every_kind_its_index(made):
    for record in real_book().records():
        assert not record.sound or address_of(record).split("#")[0] in made
    assert all(f"{kind}/index.md" in made for kind in KINDS)


def test_every_number_of_a_record_says_on_its_page_where_it_comes_from(made):
    for record in real_book().records():
        if not record.sound or not KIND[record.kind].paged:
            continue
        page = seen(made[address_of(record)])
        for name, value in (one for _path, basis in bases_of(record) for one in basis.items()):
            words = {"practice": "common practice, no source", "invented": "INVENTED", "place": str(value)}.get(name)
            words = words or (real_book().get(value).title.split(",")[0] if real_book().get(value) else str(value))
            assert " ".join(words.split()) in page, (record.file, name)


def test_whatever_is_invented_says_so_at_the_top_of_its_page(made):
    invented = [r for kind in ("vehicles", "jobs") for r in real_book().of(kind).values() if r.sound]
    assert invented
    for record in invented:
        assert "INVENTED" in seen(made[address_of(record)])[:200]


def test_the_search_leads_to_pages_and_finds_codes_and_figures(made, trees):
    found = entries(real_book(), RULES)
    for entry in found:
        address, _, place = entry.url.replace(".html", ".md").partition("#")
        assert address in made and (not place or trees[address].css(f"#{place}")), entry
    by_url = {entry.url: entry for entry in found}
    assert by_url["codes/p0171.html"].synonyms[0] == "P0171"
    assert "36 to 65 psi" in by_url["readings/rail-pressure-primed.html"].synonyms


def test_the_same_book_gives_the_same_bytes():
    assert pages(real_book(), RULES) == pages(real_book(), RULES)


def test_an_empty_book_has_every_index_and_says_that_nothing_is_there():
    made = pages(book_of({}))
    assert "none in this book yet" in seen(made["faults/index.md"])
    assert all(f"{kind}/index.md" in made for kind in KINDS)


def test_a_rule_page_keeps_the_indentation_and_the_brackets_of_its_examples(made):
    assert "unit: [psi]" in seen(made["rules/UNIT-1.md"])
    assert "&#160;&#160;unit" in made["rules/UNIT-1.md"]


def test_a_hostile_record_is_shown_as_it_was_written_on_every_page_that_speaks_of_it():
    evil = "</p></aside><script>alert(1)</script> [x](http://example.org) **b** {{ a }} | `c` &lt; \"q\" 's'"
    made = pages(book_of(hostile(evil)))
    spoken = " ".join(evil.split())
    shown_on = [path for path, page in made.items() if path.endswith(".md") and spoken in seen(page)]
    assert {"procedures/work.md", "cautions/fire.md", "faults/broken.md", "components/part.md", "index.md"} <= set(
        shown_on
    )
    for path, page in made.items():
        if not path.endswith(".md"):
            continue
        tree = parsed(page)
        assert not tree.css("script, img, iframe, [onerror], a[href^='http']"), path
        assert not list(tree.css("em, code, blockquote")), path
    assert "<script" not in json.dumps([text(e.title) for e in entries(book_of(hostile(evil)))])


def hostile(evil: str) -> dict:
    """A small book in which every text is hostile."""
    common = {"title": evil, "summary": evil, "also_called": [evil], "status": "draft"}
    practice = {"practice": True}
    return {
        "components": {"part": common | {"does": evil, "found": evil, "fails": [evil], "mistaken_for": "none"}},
        "conditions": {"idle": common | {"implies": "none"}},
        "readings": {
            "looks": common
            | {
                "answers": ["dry", "wet"],
                "healthy": ["dry"],
                "at": "part",
                "when": "idle",
                "each": "none",
                "valid_if": "none",
            }
        },
        "systems": {
            "system": common
            | {
                "family": "fuel",
                "shows": "none",
                "explains": [evil],
                "changed": evil,
                "has": "none",
                "mistaken_for": "none",
                "calculators": "none",
                "bands": "none",
                "paths": [{"name": "supply", "carries": "vacuum", "through": ["part"]}],
            }
        },
        "cautions": {
            "fire": common
            | {
                "signal": "DANGER",
                "severity": "will-kill",
                "hazards": ["heat"],
                "danger": evil,
                "consequence": evil,
                "avoid": [evil, evil],
                "basis": practice,
            }
        },
        "hazards": {"heat": common | {"triggers": "none"}},
        "tasks": {"task": {"title": evil, "summary": evil}},
        "procedures": {
            "work": common
            | {
                "systems": "none",
                "tasks": ["task"],
                "inherits": "none",
                "leaves": "none",
                "where": ["bay"],
                "minutes": {"hands": 1},
                "spoils": "none",
                "next": evil,
                "needs": {"states": "none", "has": "none", "equipment": "none", "consumables": [evil], "people": 1},
                "misleads": [evil],
                "explain": evil,
                "steps": [
                    {
                        "do": evil,
                        "takes": {"reading": "looks"},
                        "cautions": ["fire"],
                        "lasts": {
                            "value": 1,
                            "unit": evil,
                            "because": evil,
                            "basis": {"source": "nowhere", "place": evil},
                        },
                    }
                ],
                "results": {"looks": {"wet": evil}},
            }
        },
        "symptoms": {"symptom": common | {"ask": [evil], "first": ["looks"], "prevents": "none", "explain": evil}},
        "faults": {
            "broken": common
            | {
                "part": "part",
                "commonness": "rare",
                "stages": {"all": {"looks": "wet"}},
                "because": {"looks": evil},
                "felt_as": {"symptom": "always"},
                "mended_by": [{"words": evil}],
                "proved_by": {"none": evil},
            }
        },
        "terms": {"term": {"title": evil, "means": evil, "also_called": "none", "basis": practice}},
    }
